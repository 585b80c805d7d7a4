import type { Ms } from '../contract/fold.ts'

/** How long nobody may look before the firing counts as unwatched (field-ui 1.8: a minute). */
const unwatchedAfterMs = 60_000

/** Knows from the echo of the page's own script whether somebody could see the screen: a sleeping tablet answers pings, not this. */
export class Watch {
  private seenAt: Ms

  constructor(now: Ms) {
    this.seenAt = now
  }

  echo(now: Ms, visible: boolean): void {
    if (visible) this.seenAt = now
  }

  unwatched(now: Ms): boolean {
    return now - this.seenAt > unwatchedAfterMs
  }
}
