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
  /** How long the outlet has now stood over the limit of dry cloths, and the last spells of it, min: this operator's habit. */
  dryMin: number
  drySpells: number[]
  /** Cloths have been wetted in this firing: logged, or seen in the outlet. */
  everWetted: boolean
  /** The wetting that is being looked at. */
  checkedWettingAt: Ms | null
  before: number | null
  helped: boolean | null
}

export function startCondenser(): CondenserWatch {
  return {
    vapourSince: null,
    wetC: null,
    topK: 0,
    tops: [],
    dryMin: 0,
    drySpells: [],
    everWetted: false,
    checkedWettingAt: null,
    before: null,
    helped: null,
  }
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

/** Cold water on the cloths makes the outlet fall by so much within three minutes. From trials, no source. */
const wettingFallK = 12
/** Cloths count as dry so far over what wet ones reach, K. From trials, no source. */
const dryByK = 13
const dryBandK = 4
const shortestSpellMin = 3
const spellsKept = 5
/** An alarm comes when a spell lasts half as long again as this operator's usual ones, between these, min. From trials, no source. */
const spellTimes = 1.5
const spellLimits = { least: 9, most: 13, unknown: 15 } as const

/** Whoever was told within the hour knows, and gets so much longer. From trials, no source. */
const afterTellingMin = 6

/** Over this the cloths count as dry, °C; null while the load is unknown. */
export function dryLimitC(watch: CondenserWatch, look: Look): number | null {
  return watch.wetC === null ? null : Math.max(look.config.limits.condenserNoticeC, watch.wetC + dryByK)
}

function followSpell(watch: CondenserWatch, look: Look): void {
  const limit = dryLimitC(watch, look)
  const now = mean(look.past.outlet, 2)
  if (limit === null || now === null) return
  if (now >= limit || (watch.dryMin > 0 && now >= limit - dryBandK)) {
    watch.dryMin++
    return
  }
  if (watch.dryMin >= shortestSpellMin) watch.drySpells = [...watch.drySpells, watch.dryMin].slice(-spellsKept)
  watch.dryMin = 0
}

/** How long the outlet may stand over the limit before it is an alarm, min. */
export function patienceMin({ drySpells }: CondenserWatch, toldLately: boolean): number {
  const more = toldLately ? afterTellingMin : 0
  if (drySpells.length < 2) return spellLimits.unknown + more
  const usual = [...drySpells].sort((a, b) => a - b)[drySpells.length >> 1] ?? spellLimits.unknown
  return more + Math.min(spellLimits.most, Math.max(spellLimits.least, spellTimes * usual))
}

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
  followSpell(watch, look)
  const before = mean(look.past.outlet, 1, 3)
  const newest = mean(look.past.outlet, 1)
  if (look.facts.wettings.length > 0 || (before !== null && newest !== null && before - newest >= wettingFallK)) watch.everWetted = true
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

/** Tops scatter: one that was let happen once may come again. From trials, no source. */
const topShare = 0.85

/** What the top of a cycle usually is here, K; null before two of them. */
export function usualTopK(watch: CondenserWatch): number | null {
  if (watch.tops.length < 2) return null
  const sorted = [...watch.tops].sort((a, b) => a - b)
  return Math.max(sorted[sorted.length >> 1] ?? 0, topShare * (sorted.at(-1) ?? 0))
}

/** Minutes until the outlet stands `overK` above what wet cloths reach; null while it does not climb. */
export function minutesUntilDry(watch: CondenserWatch, look: Look, overK: number): number | null {
  const now = mean(look.past.outlet, 2)
  const rate = slope(look.past.outlet, 6)
  if (now === null || watch.wetC === null || rate === null || rate < 12 || now < watch.wetC + 2) return null
  const minutes = ((watch.wetC + overK - now) / rate) * 60
  return minutes < 0 ? 0 : minutes
}
