import type { Ms } from '../../contract/fold.ts'
import { highest, lowest, mean, quantile, slope } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import { startHolding, stepHolding, wettedAnew, type Holding } from './holding.ts'

/** What the condenser's outlet does, and what it does with wet cloths. */
export interface CondenserWatch {
  /** Since when vapour comes through. */
  vapourSince: Ms | null
  /** The first two wettings since then: they tell what wet cloths reach before the load has settled. */
  firstWettings: Ms[]
  /** Outlet with wet cloths at the present load, °C. */
  wetC: number | null
  /** Outlet over wet at the top of the running cycle, and of the last cycles, K: what this operator lets happen. */
  topK: number
  tops: number[]
  /** How long the outlet has now stood over the limit of dry cloths, min. */
  dryMin: number
  /** How surely the cloths are dry: minutes over the limit, those that stand clear of it whole, those under it taken back. */
  dryness: number
  /** The greatest dryness since the last wetting, and what it was at the last wettings: what this operator lets happen. */
  driest: number
  /** For how many minutes the outlet has stood where no wave takes it for so long. */
  farMin: number
  letDry: number[]
  /** The outlet moves for another reason than dried cloths: it is on its way down, or a wave of smoke comes through. */
  passing: boolean
  /** For how many minutes of this spell a wave has come through. */
  waveMin: number
  /** The outlet falls, or has just fallen, as it does under cold water; a wetting once it has come under the limit. */
  fellAt: Ms | null
  /** When cloths were last seen to be wetted, in the outlet. */
  seenWettedAt: Ms | null
  /** When cloths were last wetted, logged or seen in the outlet; null before the first time. */
  wettedAt: Ms | null
  holding: Holding
  /** The last pauses between wettings, min: this operator's habit. */
  pausesMin: number[]
  /** The wetting that is being looked at. */
  checkedWettingAt: Ms | null
  before: number | null
  helped: boolean | null
}

export function startCondenser(): CondenserWatch {
  return {
    vapourSince: null,
    firstWettings: [],
    wetC: null,
    topK: 0,
    tops: [],
    dryMin: 0,
    dryness: 0,
    driest: 0,
    farMin: 0,
    letDry: [],
    passing: false,
    waveMin: 0,
    fellAt: null,
    seenWettedAt: null,
    wettedAt: null,
    holding: startHolding(),
    pausesMin: [],
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
/** Two wettings show it sooner, so long after the first. From trials, no source. */
const shownMs = 15 * minuteMs

/** Cloths begin to dry here, K over what wet ones reach at the same load; a top counts as a cycle from the second figure on. No source. */
const dryingK = 8
const cycleTopK = 9

/**
 * Cold water on the cloths makes the outlet fall by so much of what it stood over wet ones, and by so many K, within three minutes, and
 * brings it under the limit of dry cloths a few minutes later: a wave that ends over dry cloths falls as far, and stays over it. From
 * trials, no source.
 */
const wettingFall = { share: 0.4, leastK: 8, arrivesMs: 8 * minuteMs } as const
const pausesKept = 6
const fewestPauses = 3

/**
 * Cloths count as dry so far over what wet ones reach, K, and over the notice; or twice as far where the outlet is warm at all, for in a
 * cool pipe the notice says nothing. From trials, no source.
 */
const dryByK = 11
const dryBandK = 4
const plainlyDry = { byK: 18, fromC: 34 } as const
/** A minute so far over the limit counts whole. Most waves of vapour are gone before nine of them have come together. From trials, no source. */
const wholeMinuteK = 2
/**
 * So much more than this operator lets pass before wetting is no habit any more; who wets in time is told sooner, and nobody later than
 * the most. What gave way much sooner than the wettings before it is no habit at all. Where no wetting was seen for longer than a cycle the cloths hold by themselves, and what lifts the outlet is more often a
 * wave. From trials, no source.
 */
const habitOfDryness = { more: 3, least: 6, most: 14, unknown: 9, short: 5, lull: 12, lullAfterMs: 40 * minuteMs } as const
/** So far over the limit for so long the cloths are dry, whatever the habit and whatever the smoke does. From trials, no source. */
const farOver = { byK: 30, min: 8 } as const
/** A load that grows for a quarter of an hour lifts the outlet as well: the smoke says so, and some minutes more are asked for. From trials, no source. */
const growingLoad = { minutes: 15, smokeK: 30, moreMin: 3, most: 15 } as const
/** A wetting that gave way too soon explains what dries in the next half hour, and nothing later. From trials, no source. */
const shortForMs = 30 * minuteMs
/** Where no wetting was ever seen, more of them. No more than the most are kept. From trials, no source. */
const unseenMin = 14
const mostDryness = 16
/** One pause is half as long again as the usual one now and then, twice as long hardly ever: the alarm comes between. From trials, no source. */
const pauseTimes = 1.75
const pauseLimits = { least: 14, most: 16, unknown: 15 } as const
const habitTimes = 1.3
/** The hot alarm waits for the next wetting no longer than this, min. */
const habitMostMin = 17

/**
 * Dried cloths let the outlet climb and level off, with the smoke as it was. A wave of smoke lifts both, faster and faster, and is gone in
 * minutes: its outlet gains more in two minutes than in the two before, or the smoke gained over eight. From trials, no source.
 */
const waveGainK = 8
const waveSmokeK = 35
const waveSmokeMin = 8
/** What calls itself a wave for longer is none. */
const longestWaveMin = 12
/** And an outlet that has come down so far from its top of the last four minutes is being seen to, K. From trials, no source. */
const comesDownK = 3

/** Over this the cloths count as dry, °C; null while the load is unknown. */
export function dryLimitC(watch: CondenserWatch, look: Look): number | null {
  if (watch.wetC === null) return null
  const ordinary = Math.max(look.config.limits.condenserNoticeC, watch.wetC + dryByK)
  return Math.min(ordinary, Math.max(plainlyDry.fromC, watch.wetC + plainlyDry.byK))
}

function followSpell(watch: CondenserWatch, look: Look): void {
  const limit = dryLimitC(watch, look)
  const now = mean(look.past.outlet, 2)
  if (limit === null) watch.dryness = 0
  if (limit === null || now === null) return
  const part = Math.max(-1, Math.min(1, (now - limit) / wholeMinuteK))
  watch.dryness = Math.max(0, Math.min(mostDryness, watch.dryness + (comesDown(look) ? Math.min(0, part) : part)))
  watch.farMin = now >= limit + farOver.byK ? watch.farMin + 1 : 0
  watch.driest = Math.max(watch.driest, watch.dryness)
  watch.dryMin = now >= limit || (watch.dryMin > 0 && now >= limit - dryBandK) ? watch.dryMin + 1 : 0
}

/** It has been wetted, or the wave is over. */
function comesDown({ past }: Look): boolean {
  const now = mean(past.outlet, 1)
  const top = highest(past.outlet, 4)
  return now !== null && top !== null && now <= top - comesDownK
}

function followWaves(watch: CondenserWatch, look: Look): void {
  const { past } = look
  const [now, before, first] = [mean(past.outlet, 1), mean(past.outlet, 1, 2), mean(past.outlet, 1, 4)]
  const smoke = mean(past.smoke, 2)
  const smokeBefore = mean(past.smoke, 2, waveSmokeMin)
  const gains = now !== null && before !== null && first !== null && now - before >= before - first + waveGainK
  const wave = gains || (smoke !== null && smokeBefore !== null && smoke - smokeBefore >= waveSmokeK)
  if (watch.dryMin === 0) watch.waveMin = 0
  else if (wave) watch.waveMin++
  watch.passing = comesDown(look) || (wave && watch.waveMin <= longestWaveMin)
}

function followWettings(watch: CondenserWatch, look: Look): void {
  const before = mean(look.past.outlet, 1, 3)
  const now = mean(look.past.outlet, 1)
  const fall = before === null || now === null ? 0 : before - now
  const needed = Math.max(wettingFall.leastK, wettingFall.share * ((before ?? 0) - (watch.wetC ?? vapourC)))
  if (fall >= needed) watch.fellAt ??= look.at - 2 * minuteMs
  if (watch.fellAt !== null && look.at - watch.fellAt > wettingFall.arrivesMs) watch.fellAt = null
  const limit = dryLimitC(watch, look)
  if (watch.fellAt !== null && (limit === null || (now !== null && now <= limit))) {
    wetted(watch, watch.fellAt)
    watch.seenWettedAt = look.at
    watch.dryness = 0
    watch.fellAt = null
  }
  const logged = look.facts.wettings.at(-1)
  if (logged !== undefined) wetted(watch, logged)
}

function wetted(watch: CondenserWatch, at: Ms): void {
  if (watch.wettedAt !== null && at < watch.wettedAt + 3 * minuteMs) return
  if (watch.wettedAt !== null) watch.pausesMin = [...watch.pausesMin, (at - watch.wettedAt) / minuteMs].slice(-pausesKept)
  watch.wettedAt = at
  // less is no drying: a second bucket, or cloths that were wet
  if (watch.driest >= 1) watch.letDry = [...watch.letDry, watch.driest].slice(-pausesKept)
  watch.driest = 0
  if (watch.vapourSince !== null && at > watch.vapourSince) watch.firstWettings = [...watch.firstWettings, at].slice(0, 2)
  wettedAnew(watch.holding)
}

const middle = (values: readonly number[]): number | null => [...values].sort((a, b) => a - b)[values.length >> 1] ?? null

/** So much dryness is more than this operator lets pass. */
function enoughDryness(watch: CondenserWatch, look: Look): number {
  const byHabit = habitualDryness(watch, look.at)
  return loadGrows(look) ? Math.min(growingLoad.most, byHabit + growingLoad.moreMin) : byHabit
}

function loadGrows({ past }: Look): boolean {
  const now = mean(past.smoke, 2)
  const before = mean(past.smoke, 2, growingLoad.minutes)
  return now !== null && before !== null && now - before > growingLoad.smokeK
}

function habitualDryness({ letDry, wettedAt }: CondenserWatch, at: Ms): number {
  const { more, least, most, unknown, lull, lullAfterMs } = habitOfDryness
  if (wettedAt !== null && at - wettedAt > lullAfterMs) return lull
  return letDry.length < fewestPauses ? unknown : Math.max(least, Math.min(most, more + (middle(letDry) ?? 0)))
}

/** What the pause between two wettings usually is here, min; null before the fourth wetting. */
function usualPauseMin({ pausesMin }: CondenserWatch): number | null {
  if (pausesMin.length < fewestPauses) return null
  return middle(pausesMin)
}

/** Far over the limit for long: no wave, and no habit. */
export const isFarOver = ({ farMin }: CondenserWatch): boolean => farMin >= farOver.min

/** Cloths are dry, and nobody wets them as usual. */
export function isForgotten(watch: CondenserWatch, look: Look): boolean {
  if (isFarOver(watch)) return true
  if (watch.wettedAt === null) return watch.dryness >= unseenMin
  if (watch.holding.isShort && look.at - watch.wettedAt <= shortForMs) return watch.dryness >= habitOfDryness.short
  const usual = usualPauseMin(watch)
  const limit = usual === null ? pauseLimits.unknown : Math.min(pauseLimits.most, Math.max(pauseLimits.least, pauseTimes * usual))
  return watch.dryness >= enoughDryness(watch, look) && look.at - watch.wettedAt >= limit * minuteMs
}

/** The next wetting is about to come by this operator's habit. */
export function isWithinHabit(watch: CondenserWatch, look: Look): boolean {
  const usual = usualPauseMin(watch)
  return usual !== null && watch.wettedAt !== null && look.at - watch.wettedAt < Math.min(habitMostMin, habitTimes * usual) * minuteMs
}

/** Once a minute. */
export function stepCondenser(watch: CondenserWatch, look: Look): void {
  const now = mean(look.past.outlet, 3)
  if (now === null) return
  // a fire that failed takes the vapour with it: what wet cloths reach is learnt anew after it
  const fire = mean(look.past.firebox, 5)
  const usual = quantile(look.past.firebox, 180, 0.75)
  const failed = fire !== null && usual !== null && fire < 0.65 * usual && now < look.config.limits.condenserNoticeC
  if (failed && look.facts.stoppedFeedingAt === null) watch.vapourSince = null
  else if (now >= vapourC) watch.vapourSince ??= look.at
  if (watch.vapourSince === null) watch.firstWettings = []
  watch.wetC = wetOutletC(watch, look)
  if (watch.wettedAt !== null) stepHolding(watch.holding, look, (look.at - watch.wettedAt) / minuteMs)
  followCycle(watch, mean(look.past.outlet, 1) ?? now)
  followSpell(watch, look)
  followWaves(watch, look)
  followWettings(watch, look)
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

/** What wet cloths reach at the present load; null while nothing tells. */
function wetOutletC({ vapourSince, firstWettings }: CondenserWatch, look: Look): number | null {
  if (vapourSince === null) return null
  if (look.at - vapourSince >= settledMs) return lowest(look.past.outlet, cycleMin)
  const [first, second] = firstWettings
  if (first === undefined || second === undefined || look.at - first < shownMs) return null
  return lowest(look.past.outlet, Math.min(cycleMin, Math.floor((look.at - first) / minuteMs) + 3))
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

/** A pipe this cool hardly lets vapour through, however dry its cloths: nobody is sent to wet them, °C. Common practice, no source. */
const coolPipeC = 32

/** Where cloths that dry are to be wetted, °C; null while the load is unknown. */
export const wetByC = ({ wetC }: CondenserWatch): number | null => (wetC === null ? null : Math.max(coolPipeC, wetC + dryingK))

/** Minutes until cloths are to be wetted; null while the outlet does not climb. */
export function minutesUntilDry(watch: CondenserWatch, look: Look): number | null {
  const now = mean(look.past.outlet, 2)
  const rate = slope(look.past.outlet, 6)
  const limit = wetByC(watch)
  if (now === null || watch.wetC === null || limit === null || rate === null || rate < 12 || now < watch.wetC + 2) return null
  return Math.max(0, ((limit - now) / rate) * 60)
}
