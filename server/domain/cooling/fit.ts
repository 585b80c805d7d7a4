import type { Ms, Reason } from '../../contract/fold.ts'
import { mean } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'

/**
 * The sealed kiln, one point every ten minutes: the wall over the air. It falls like a straight line in the logarithm, and the charcoal inside
 * falls with it, hotter by a share that stays the same; so the wall alone bounds the hottest part once that share is bounded.
 */
export interface Cooling {
  sealedAt: Ms
  /** Wall over the air when it was sealed, K; null until it is known. */
  firstK: number | null
  /** Wall over the air every ten minutes from the seal on; null in gaps. */
  points: (number | null)[]
  lowestK: number | null
  /** Highest and lowest of the other sealed-side probes since an hour after sealing, °C. */
  wallLowC: number | null
  fireboxLowC: number | null
  coreLowC: number | null
  rose: Reason[] | null
  slow: Reason[] | null
  relit: Reason[] | null
  /** The wall fell faster than any sealed drum under earth: its probe came off, and it tells nothing of the inside any more. */
  wallOff: Reason[] | null
  /** Since when everything that opening asks for has held. */
  fitSince: Ms | null
  doubts: Reason[]
  hottestC: number | null
}

export function startCooling(sealedAt: Ms): Cooling {
  return {
    sealedAt,
    firstK: null,
    points: [],
    lowestK: null,
    wallLowC: null,
    fireboxLowC: null,
    coreLowC: null,
    rose: null,
    slow: null,
    relit: null,
    wallOff: null,
    fitSince: null,
    doubts: [],
    hottestC: null,
  }
}

/** What the probes showed while the kiln was cold, before lighting: it takes out how the wall probe differs from that of the air. */
export interface ColdStart {
  wallOverAirK: number | null
}

/**
 * Hottest part over the air when sealed, K, as far back as the straight line reaches. Un-aided charring tops out near 400 (trade facts 1.1.13) and
 * good charcoal wants 500 (1.1.14); simulated kilns gave 330 to 490; refining goes on to 700.
 */
const hottestAtSealK = 530
const hottestRefinedK = 750
const tenMinutesMs = 600_000
const hourMs = 3_600_000

/** The air about the kiln: its own probe, or the coolest of those that stand outside, which follow it once sealed. */
export function airC(look: Look): { value: number; measured: boolean } | null {
  const ambient = mean(look.past.ambient, 20)
  if (ambient !== null) return { value: ambient, measured: true }
  const outside = [mean(look.past.outlet, 20), mean(look.past.smoke, 20)].filter((v): v is number => v !== null)
  return outside.length === 0 ? null : { value: Math.min(...outside), measured: false }
}

/** Every ten minutes while sealed. */
export function stepCooling(cooling: Cooling, look: Look, cold: ColdStart): void {
  const air = airC(look)
  const wall = mean(look.past.wall, 10)
  const elapsedMs = look.at - cooling.sealedAt
  const over = air === null || wall === null ? null : wall - Math.max(-6, Math.min(6, cold.wallOverAirK ?? 0)) - air.value
  if (over !== null && cooling.firstK === null && elapsedMs < hourMs) cooling.firstK = over
  cooling.points.push(over === null ? null : Math.round(over * 1000) / 1000)
  cooling.wallOff ??= fellOff(cooling, over)
  cooling.hottestC = air === null || over === null ? null : hottest(cooling, look, over, air.value)
  leaks(cooling, look, over, elapsedMs)
}

// Recorded and simulated tight drums kept at least 0.85 of the wall's excess over the air in 20 minutes and 0.7 in an hour: trials, no source.
const keptIn20Min = 0.7
const keptInHour = 0.5
/** Nearer to the air a shower or the sun moves the wall as fast, K. */
const fallFromK = 40

function fellOff(cooling: Cooling, over: number | null): Reason[] | null {
  if (over === null) return null
  const last = cooling.points.length - 1
  const falls = (back: number, kept: number): boolean => {
    const before = cooling.points[last - back]
    return before !== null && before !== undefined && before > fallFromK && over < kept * before
  }
  return falls(1, keptIn20Min) || falls(2, keptIn20Min) || falls(6, keptInHour) ? [{ code: 'wall-fell-off', value: over }] : null
}

/** Upper bound of the hottest part, °C. */
function hottest(cooling: Cooling, look: Look, over: number, air: number): number {
  const start = look.facts.refinedAt === null ? hottestAtSealK : hottestRefinedK
  // where the wall at sealing was missed, the coolest wall that still gave charcoal is assumed
  const share = Math.max(1.15, start / Math.max(120, cooling.firstK ?? 200))
  const core = mean(look.past.core, 10)
  return Math.max(air + Math.max(0, over) * share, core ?? -273)
}

/** From trials, no source. */
const wallRiseK = 5

function leaks(cooling: Cooling, look: Look, over: number | null, elapsedMs: number): void {
  const core = mean(look.past.core, 10)
  const firebox = mean(look.past.firebox, 10)
  if (elapsedMs < hourMs) return
  const rises: Reason[] = []
  const wall = mean(look.past.wall, 10)
  if (over !== null && wall !== null) {
    const low = (cooling.lowestK = Math.min(cooling.lowestK ?? over, over))
    const lowC = (cooling.wallLowC = Math.min(cooling.wallLowC ?? wall, wall))
    const limit = Math.max(wallRiseK, 0.04 * low)
    // over the air and by itself: a night cools the air before the earth, a day warms both
    const rise = Math.min(over - low, wall - lowC)
    if (rise > limit) rises.push({ code: 'wall-rose', value: rise, limit })
  }
  if (core !== null) {
    const low = (cooling.coreLowC = Math.min(cooling.coreLowC ?? core, core))
    if (core > low + 6) rises.push({ code: 'core-rose', value: core - low, limit: 6 })
  }
  if (firebox !== null) {
    const low = (cooling.fireboxLowC = Math.min(cooling.fireboxLowC ?? firebox, firebox))
    // the day warms an open firebox by some 15 K
    if (firebox > low + 25) rises.push({ code: 'firebox-rose', value: firebox - low, limit: 25 })
  }
  cooling.rose = rises.length > 0 ? rises : null
  cooling.relit = rises.some((r) => (r.value ?? 0) > 40) ? rises : null
  cooling.slow = slowing(cooling)
}

/** Fall of the logarithm per hour between two ten-minute points; null where either is missing or near nothing. */
function ratePerH(cooling: Cooling, from: number, to: number): number | null {
  const a = cooling.points[from]
  const b = cooling.points[to]
  if (a === null || a === undefined || b === null || b === undefined || a <= 2 || b <= 2) return null
  return (Math.log(a / b) * 6) / (to - from)
}

/** Tight kilns slow down as well, the heat has farther to go: down to two fifths of the first hours on trials, no source. */
const slowShare = 0.4
/** Nearer to the air a change of the weather looks the same, K. */
const slowOverK = 25

/** Slower by far than this kiln's own first hours while still well above the air: something inside keeps burning. */
function slowing(cooling: Cooling): Reason[] | null {
  const last = cooling.points.length - 1
  if (last < 48) return null
  const over = cooling.points[last]
  const first = ratePerH(cooling, 9, 36)
  const now = ratePerH(cooling, last - 24, last)
  if (over === null || over === undefined || over < slowOverK || first === null || now === null) return null
  return now < slowShare * first ? [{ code: 'cools-slower', value: now, limit: slowShare * first }] : null
}

/** How long it still takes until the bound is under `limitC` at the rate of this kiln, ms: never a promise, only "not before". */
export function notBefore(cooling: Cooling, look: Look, limitC: number): Ms | null {
  const air = airC(look)
  const last = cooling.points.length - 1
  if (air === null || cooling.hottestC === null || last < 12) return null
  const rate = ratePerH(cooling, Math.max(6, last - 24), last) ?? 0.13
  const over = cooling.hottestC - air.value
  const target = Math.max(3, limitC - air.value)
  if (over <= target) return look.at
  return look.at + (Math.log(over / target) / Math.max(0.03, rate)) * hourMs
}

export const coolingStepMs = tenMinutesMs
