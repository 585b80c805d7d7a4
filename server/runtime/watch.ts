import type { Ms } from '../contract/fold.ts'

/**
 * A page whose script has been silent for so long has stopped: asleep, frozen, or cut off. Known within 15 s (reliability 11.5), the second
 * between two looks included; a page that lost its link for ten seconds is back before.
 */
const stoppedAfterMs = 13_000
/** How long a page that answers may be hidden, or nobody may have come back to one that was closed (field-ui 1.8: a minute). */
const unseenAfterMs = 60_000
/** The service itself stood still, or its host slept: what the pages said meanwhile has yet to be read. */
const looksWithinMs = 3000

/** One page of a browser, as its connection. */
export type Page = object

/** Knows from the echo of each page's own script whether somebody could see a screen: a sleeping tablet answers pings, not this. */
export class Watch {
  private readonly pages = new Map<Page, { heardAt: Ms; seenAt: Ms }>()
  /** Until when nobody is missed: a page was closed by hand, or the service has just begun. */
  private excusedUntil: Ms
  private lookedAt: Ms
  private missed = false

  constructor(now: Ms) {
    this.excusedUntil = now + unseenAfterMs
    this.lookedAt = now
  }

  echo(page: Page, now: Ms, visible: boolean): void {
    this.pages.set(page, { heardAt: now, seenAt: visible ? now : (this.pages.get(page)?.seenAt ?? -Infinity) })
  }

  /** The page was closed in order, or is being loaded again. */
  leave(page: Page): void {
    const known = this.pages.get(page)
    if (known === undefined) return
    this.pages.delete(page)
    this.excusedUntil = Math.max(this.excusedUntil, known.seenAt + unseenAfterMs)
  }

  /** Once a second, by the clock and not by what was stored. */
  look(now: Ms): void {
    const stood = now - this.lookedAt
    this.lookedAt = now
    if (stood > looksWithinMs) this.excuse(stood)
    let watched = false
    for (const [page, { heardAt, seenAt }] of this.pages) {
      if (now - heardAt > stoppedAfterMs) {
        this.pages.delete(page)
        this.excusedUntil = -Infinity
      } else watched ||= now - seenAt <= unseenAfterMs
    }
    this.missed = !watched && now > this.excusedUntil
  }

  /** As of the last look. */
  unwatched(): boolean {
    return this.missed
  }

  private excuse(ms: Ms): void {
    for (const page of this.pages.values()) {
      page.heardAt += ms
      page.seenAt += ms
    }
    this.excusedUntil += ms
  }
}
