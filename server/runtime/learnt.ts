import type { KilnId, Ms } from '../contract/fold.ts'
import type { KeptLesson, KilnChange, Prior } from '../contract/learnt.ts'
import { lastFirings, priorFrom } from '../domain/learnt/compose.ts'
import type { Store } from '../storage/store.ts'

const kind = 'kiln-change'
/** Not every firing teaches: so many are looked through for the last that did. */
const mostLookedThrough = 4 * lastFirings

/** What the firings on the shelf taught of each kiln, and from when on that counts. */
export class Learnt {
  private readonly store: Store

  constructor(store: Store) {
    this.store = store
  }

  /** What the next firing of this kiln begins with; undefined where nothing was learnt. */
  async prior(kiln: KilnId): Promise<Prior | undefined> {
    const since = await this.changedAt(kiln)
    const kept: KeptLesson[] = []
    const own = (await this.store.firings()).filter((firing) => firing.kiln === kiln && firing.startedAt > since)
    for (const { id } of own.slice(0, mostLookedThrough)) {
      // one that came from a file has no beginning of its own: whose kiln it was nobody knows
      if (((await this.store.firing(id))?.intake.length ?? 0) === 0) continue
      for (const output of await this.store.outputs(id, ['lesson']))
        if (output.kind === 'lesson') kept.push({ firing: id, at: output.at, lesson: output.lesson })
      if (new Set(kept.map(({ firing }) => firing)).size >= lastFirings) break
    }
    return priorFrom(kept)
  }

  /** What was learnt before no longer counts; nothing is erased. */
  async forget(kiln: KilnId, what: KilnChange, at: Ms, by: string): Promise<void> {
    await this.store.putDocument({ kind, id: kiln, at, by, json: JSON.stringify({ what }) })
  }

  private async changedAt(kiln: KilnId): Promise<Ms> {
    return (await this.store.documents(kind)).find(({ id }) => id === kiln)?.at ?? -Infinity
  }
}
