import type { KilnId } from '../../../../server/contract/fold.ts'
import type { KilnPart, KilnView, ServerMessage, SiteView } from '../../../../server/contract/live.ts'
import { afterFrame } from './after-frame.ts'
import { KilnParts } from './kiln-parts.svelte.ts'

/**
 * All that the page knows of the site. Every part is replaced whole, never changed in place. Numbers are taken at once; what else comes
 * with them (the estimate, the forecast, the sentence) is taken together when they stand on the screen, the newest of each part.
 */
export class LiveState {
  ready = $state(false)
  version = $state('')
  clockSure = $state(true)
  site = $state.raw<SiteView | null>(null)
  kilns = $state.raw<Record<KilnId, KilnParts>>({})
  /** Which kiln the person chose; the first one otherwise. */
  chosen = $state<KilnId | null>(null)
  #seq = 0
  readonly #later: (run: () => void) => void
  #waiting: { of: string; take: () => void }[] = []

  kilnId = $derived.by<KilnId | null>(() => {
    const ids = Object.keys(this.kilns)
    return this.chosen !== null && ids.includes(this.chosen) ? this.chosen : (ids[0] ?? null)
  })
  kiln = $derived<KilnView | null>(this.kilnId === null ? null : (this.kilns[this.kilnId] ?? null))
  /** No node has ever been heard: the page then offers the demo. */
  nobodySends = $derived(this.ready && (this.site?.nodes.length ?? 0) === 0)

  /** @param later runs what waits for the numbers to be painted */
  constructor(later: (run: () => void) => void = afterFrame) {
    this.#later = later
  }

  apply(message: ServerMessage): void {
    if (message.type === 'hello') {
      this.#waiting = []
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
      this.#take(kiln, message.kiln, message.part, message.value)
    } else if (message.type === 'site' && this.site && message.seq > this.#seq) {
      this.#seq = message.seq
      this.site = { ...this.site, [message.part]: message.value } as SiteView
    }
  }

  #take(kiln: KilnParts, id: KilnId, part: KilnPart, value: unknown): void {
    const take = (): void => void Object.assign(kiln, { [part]: value })
    if (part === 'channels') return take()
    if (this.#waiting.length === 0) this.#later(() => this.#takeAll())
    const of = `${id} ${part}`
    this.#waiting = [...this.#waiting.filter((one) => one.of !== of), { of, take }]
  }

  #takeAll(): void {
    const all = this.#waiting
    this.#waiting = []
    for (const { take } of all) take()
  }
}
