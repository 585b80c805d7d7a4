import { uptime } from 'node:os'
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
  /** Moves the axis forward to the host's time, where that was set later; only while nobody fires. */
  catchUp(): void
}

const earliestBelievable = Date.UTC(2024, 0, 1)
const agreesWithinMs = 5000
const sleptAtLeastMs = 2000

/** Where the host's own times come from. */
export interface HostTimes {
  wall(): Ms
  /** Stands still while the host sleeps. */
  monotonic(): number
  /** Since the host was switched on, its sleep included, ms. */
  uptime(): number
}
const host: HostTimes = { wall: Date.now, monotonic: () => performance.now(), uptime: () => uptime() * 1000 }

/**
 * The real clock: anchored once to the host's time (or to the end of the journal, whichever is later), then monotonic,
 * so that a step of the host's clock never moves a timer of a firing. Hours that the host slept did pass, and count.
 */
export function systemClock(notBefore: Ms, times: HostTimes = host): Clock {
  const begun = { monotonic: times.monotonic(), uptime: times.uptime() }
  let anchor = Math.max(times.wall(), notBefore)
  let slept = 0
  const now = () => {
    const passed = times.monotonic() - begun.monotonic
    const asleep = times.uptime() - begun.uptime - passed
    if (asleep > slept + sleptAtLeastMs) slept = asleep
    return Math.floor(anchor + passed + slept)
  }
  return {
    now,
    at(when, run) {
      const timer = setTimeout(run, Math.max(0, when - now()))
      return () => clearTimeout(timer)
    },
    speed: () => 1,
    sure: () => times.wall() > earliestBelievable && Math.abs(times.wall() - now()) < agreesWithinMs,
    catchUp() {
      const behind = times.wall() - now()
      if (behind > agreesWithinMs) anchor += behind
    },
  }
}
