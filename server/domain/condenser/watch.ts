import type { Ms } from '../../contract/fold.ts'
import { lowest, mean, quantile, slope } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'

/** What the condenser's outlet does, and what it does with wet cloths. */
export interface CondenserWatch {
  /** Since when vapour comes through. */
  vapourSince: Ms | null
  /** Outlet with wet cloths at the present load, °C. */
  wetC: number | null
  /** Outlet over wet at the top of the running cycle, and of the last cycles, K: what this operator lets happen. */
  topK: number
  tops: number[]
  /** The wetting that is being looked at. */
  checkedWettingAt: Ms | null
  before: number | null
  helped: boolean | null
}

export function startCondenser(): CondenserWatch {
  return { vapourSince: null, wetC: null, topK: 0, tops: [], checkedWettingAt: null, before: null, helped: null }
}

const minuteMs = 60_000
/** An outlet this warm carries vapour; below it the drum only breathes. Common practice, no source. */
const vapourC = 38
/** Cloths dry in a quarter to three quarters of an hour; the coolest of that time is what wet ones reach. Common practice, no source. */
const cycleMin = 40
/** The load is not settled before: the outlet warms with the kiln. */
const settledMs = 50 * minuteMs

/** Cloths begin to dry here, K over what wet ones reach at the same load; a top counts as a cycle from the second figure on. No source. */
export const dryingK = 8
const cycleTopK = 9

/** Once a minute. */
export function stepCondenser(watch: CondenserWatch, look: Look): void {
  const now = mean(look.past.outlet, 3)
  if (now === null) return
  // a fire that failed takes the vapour with it: what wet cloths reach is learnt anew after it
  const fire = mean(look.past.firebox, 5)
  const usual = quantile(look.past.firebox, 180, 0.75)
  if (fire !== null && usual !== null && fire < 0.65 * usual && look.facts.stoppedFeedingAt === null) watch.vapourSince = null
  else if (now >= vapourC) watch.vapourSince ??= look.at
  watch.wetC = watch.vapourSince !== null && look.at - watch.vapourSince >= settledMs ? lowest(look.past.outlet, cycleMin) : null
  followCycle(watch, mean(look.past.outlet, 1) ?? now)
  const wetted = look.facts.wettings.at(-1)
  if (wetted === undefined) return
  if (wetted !== watch.checkedWettingAt) {
    watch.checkedWettingAt = wetted
    watch.before = now
    watch.helped = null
  } else if (watch.helped === null && watch.before !== null && look.at - wetted >= 7 * minuteMs) {
    const warm = watch.wetC !== null && watch.before > watch.wetC + 5
    watch.helped = !warm || now <= watch.before - 3
  }
}

function followCycle(watch: CondenserWatch, outletC: number): void {
  const over = watch.wetC === null ? 0 : outletC - watch.wetC
  watch.topK = Math.max(watch.topK, over)
  if (over > watch.topK / 2 || watch.topK < cycleTopK) return
  watch.tops = [...watch.tops.slice(-3), watch.topK]
  watch.topK = over
}

/** What the top of a cycle usually is here, K; null before two of them. */
export function usualTopK(watch: CondenserWatch): number | null {
  if (watch.tops.length < 2) return null
  const sorted = [...watch.tops].sort((a, b) => a - b)
  return sorted[sorted.length >> 1] ?? null
}

/** Minutes until the outlet stands `overK` above what wet cloths reach; null while it does not climb. */
export function minutesUntilDry(watch: CondenserWatch, look: Look, overK: number): number | null {
  const now = mean(look.past.outlet, 2)
  const rate = slope(look.past.outlet, 6)
  if (now === null || watch.wetC === null || rate === null || rate < 12 || now < watch.wetC + 2) return null
  const minutes = ((watch.wetC + overK - now) / rate) * 60
  return minutes < 0 ? 0 : minutes
}
