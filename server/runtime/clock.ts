import type { Ms } from '../contract/fold.ts'

/** The one place where the monotonic axis meets UTC. */
export interface Clock {
  /** Whole milliseconds, never going back; reads as Unix time. */
  now(): Ms
  /** Runs once when the axis has reached `when`; the returned function takes it back. */
  at(when: Ms, run: () => void): () => void
  /** How fast the axis runs against real time. */
  speed(): number
  /** False while the host's own clock says something else than this axis, or cannot be right. */
  sure(): boolean
}

const earliestBelievable = Date.UTC(2024, 0, 1)
const agreesWithinMs = 5000

/**
 * The real clock: anchored once to the host's time (or to the end of the journal, whichever is later), then monotonic,
 * so that a step of the host's clock never moves a timer of a firing.
 */
export function systemClock(notBefore: Ms, wall: () => Ms = Date.now, monotonic: () => number = () => performance.now()): Clock {
  const anchor = Math.max(wall(), notBefore)
  const begun = monotonic()
  const now = () => Math.floor(anchor + monotonic() - begun)
  return {
    now,
    at(when, run) {
      const timer = setTimeout(run, Math.max(0, when - now()))
      return () => clearTimeout(timer)
    },
    speed: () => 1,
    sure: () => wall() > earliestBelievable && Math.abs(wall() - now()) < agreesWithinMs,
  }
}
