import type { Ms } from '../../../../server/contract/fold.ts'
import type { ServerMessage, SiteView } from '../../../../server/contract/live.ts'
import type { Place } from '../place.ts'

/** Handbook field-ui 8.1: beats come every 2 s; 6 s of silence are said, 15 s cover the page. */
export const silentAfterS = 6
export const coveredAfterS = 15

/**
 * The site's clock as this page sees it. The tablet's own clock may be years wrong, so only its steady counter is used
 * between two messages; in a demo the site's clock runs `speed` times as fast.
 */
export class SiteClock {
  #siteMs = 0
  #counterMs = 0
  #heardMs: number
  #counter: () => number

  /** Site time now, ms, moved on by `tick`. */
  now = $state<Ms>(0)
  /** The same in whole steps: what hangs on these is worked out anew once a second, once a minute. */
  second = $derived(Math.floor(this.now / 1000) * 1000)
  minute = $derived(Math.floor(this.now / 60_000) * 60_000)
  /** Since anything was heard, s. */
  silentS = $state(0)
  /** False until the first message. */
  set = $state(false)
  speed = $state(1)

  constructor(counter: () => number = () => performance.now()) {
    this.#counter = counter
    this.#heardMs = counter()
  }

  heard(siteNow: Ms, speed = this.speed): void {
    this.#siteMs = siteNow
    this.#counterMs = this.#heardMs = this.#counter()
    this.speed = speed
    this.set = true
    this.tick()
  }

  /** Exact, for entries; `now` is only as fine as the ticks. */
  read(): Ms {
    return this.#siteMs + (this.#counter() - this.#counterMs) * this.speed
  }

  tick(): void {
    this.now = this.read()
    this.silentS = Math.floor((this.#counter() - this.#heardMs) / 1000)
  }
}

/**
 * How fast the axis of the site that this page looks at runs. The kiln's own site tells of a demo too, because it can be started there,
 * but its clock is never the demo's; a demo whose last line was played stands still. Undefined: as before.
 */
export function speedOf(message: ServerMessage, place: Pick<Place, 'demo'>, site: Pick<SiteView, 'demo'> | null): number | undefined {
  const demo = place.demo ? (message.type === 'hello' ? message.site.demo : site?.demo) : null
  if (demo) return demo.playing ? demo.speed : 0
  return message.type === 'hello' ? message.speed : undefined
}
