import type { KilnId } from '../../contract/fold.ts'
import type { KilnPart, KilnView, SitePart, SiteView } from '../../contract/live.ts'

export type Change = { type: 'kiln'; kiln: KilnId; part: KilnPart; text: string } | { type: 'site'; part: SitePart; text: string }

/** Remembers each part as it was sent last, as JSON text, and tells which changed. */
export class Parts {
  private readonly texts = new Map<string, string>()

  ofKiln(kiln: KilnId, view: KilnView): Change[] {
    return this.changed(`kiln ${kiln}`, view).map(({ part, text }) => ({ type: 'kiln', kiln, part, text }))
  }

  ofSite(view: SiteView): Change[] {
    return this.changed('site', view).map(({ part, text }) => ({ type: 'site', part, text }))
  }

  private changed<V extends object>(whose: string, view: V): { part: keyof V & string; text: string }[] {
    const found: { part: keyof V & string; text: string }[] = []
    for (const part of Object.keys(view) as (keyof V & string)[]) {
      const text = JSON.stringify(view[part])
      const key = `${whose} ${part}`
      if (this.texts.get(key) === text) continue
      this.texts.set(key, text)
      found.push({ part, text })
    }
    return found
  }
}
