/** Timers of a page that slept or froze leave a gap; browsers slow a hidden page to one timer a minute. */
const gapMs = 10_000

/** Tells for how long this page was blind: the tablet slept, the page was hidden or frozen. */
export class SleepWatch {
  #lastMs: number
  readonly #counter: () => number
  /** Minutes of the last gap until the person has seen it; null while there was none. */
  blindMin = $state<number | null>(null)

  constructor(counter: () => number = () => Date.now()) {
    this.#counter = counter
    this.#lastMs = counter()
  }

  /** Called once a second; true when the page has just woken up. */
  tick(): boolean {
    const now = this.#counter()
    const gap = now - this.#lastMs
    this.#lastMs = now
    if (gap < gapMs) return false
    this.blindMin = Math.max(1, Math.round(gap / 60_000))
    return true
  }

  seen(): void {
    this.blindMin = null
  }
}
