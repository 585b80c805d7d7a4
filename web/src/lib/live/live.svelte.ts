import type { KilnId } from '../../../../server/contract/fold.ts'
import type { KilnView, ServerMessage, SiteView } from '../../../../server/contract/live.ts'
import { KilnParts } from './kiln-parts.svelte.ts'

/** All that the page knows of the site. Every part is replaced whole, never changed in place. */
export class LiveState {
  ready = $state(false)
  version = $state('')
  clockSure = $state(true)
  site = $state.raw<SiteView | null>(null)
  kilns = $state.raw<Record<KilnId, KilnParts>>({})
  /** Which kiln the person chose; the first one otherwise. */
  chosen = $state<KilnId | null>(null)
  #seq = 0

  kilnId = $derived.by<KilnId | null>(() => {
    const ids = Object.keys(this.kilns)
    return this.chosen !== null && ids.includes(this.chosen) ? this.chosen : (ids[0] ?? null)
  })
  kiln = $derived<KilnView | null>(this.kilnId === null ? null : (this.kilns[this.kilnId] ?? null))
  /** No node has ever been heard: the page then offers the demo. */
  nobodySends = $derived(this.ready && (this.site?.nodes.length ?? 0) === 0)

  apply(message: ServerMessage): void {
    if (message.type === 'hello') {
      this.#seq = message.seq
      this.version = message.version
      this.clockSure = message.clockSure
      this.site = message.site
      this.kilns = Object.fromEntries(Object.entries(message.kilns).map(([id, view]) => [id, new KilnParts(view)]))
      this.ready = true
    } else if (message.type === 'kiln') {
      const kiln = this.kilns[message.kiln]
      if (!kiln || message.seq <= this.#seq) return
      this.#seq = message.seq
      Object.assign(kiln, { [message.part]: message.value })
    } else if (message.type === 'site' && this.site && message.seq > this.#seq) {
      this.#seq = message.seq
      this.site = { ...this.site, [message.part]: message.value } as SiteView
    }
  }
}
