import type { Ms, Reason } from '../../contract/fold.ts'
import { chargeMass } from '../calls/heat.ts'
import { mean, slope } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import { boundOf, unbound } from './bound.ts'
import { edges } from './falls.ts'
import { coreHangsOut, fellOff, neverWarm } from './probe-off.ts'
import { firstLeastK, nightSigns } from './signs.ts'
import { ratePerH, slowing } from './slow.ts'
import type { Before, ColdStart, Cooling } from './state.ts'

const tenMinutesMs = 600_000
const hourMs = 3_600_000

/** The air about the kiln: its own probe, or the coolest of those that stand outside, which follow it once sealed. */
export function airC(look: Look): { value: number; measured: boolean } | null {
  const ambient = mean(look.past.ambient, 20)
  if (ambient !== null) return { value: ambient, measured: true }
  const outside = [mean(look.past.outlet, 20), mean(look.past.smoke, 20)].filter((v): v is number => v !== null)
  return outside.length === 0 ? null : { value: Math.min(...outside), measured: false }
}

/** The earth over a drum follows the air in about so long: of 0 to 24 h this left the least spread in the share, on trials, no source. */
const coverLagH = 8
const thinCoverLagH = 3
const thickCoverLagH = 20
/** A firing of which nobody knows when it was lit. Common practice, no source. */
const usualBurnH = 9

/** Every ten minutes while sealed. */
export function stepCooling(cooling: Cooling, look: Look, cold: ColdStart): void {
  const air = airC(look)
  const wall = mean(look.past.wall, 10)
  const elapsedMs = look.at - cooling.sealedAt
  // a pipe that carried smoke until now needs a while to be as cool as the air
  if (air !== null && (air.measured || elapsedMs >= pipeCoolsMs)) {
    const settled = mean(look.past.ambient, 240) ?? air.value
    const follow = (feltC: number | null, lagH: number): number => (feltC ?? settled) + (air.value - (feltC ?? settled)) / (6 * lagH)
    cooling.feltC = follow(cooling.feltC, coverLagH)
    cooling.quickFeltC = follow(cooling.quickFeltC, thinCoverLagH)
    cooling.slowFeltC = follow(cooling.slowFeltC, thickCoverLagH)
    cooling.airAt = look.at
  }
  const felt = cooling.feltC
  if (wall !== null && cooling.firstWallC === null && elapsedMs < firstWithinMs) cooling.firstWallC = wall - offsetK(cold)
  if (felt !== null && cooling.firstWallC !== null && cooling.firstK === null) {
    cooling.firstK = cooling.firstWallC - felt
    cooling.before = lookBack(look, cold, felt, cooling.firstK, elapsedMs / 60_000)
  }
  const over = felt === null || wall === null ? null : wall - offsetK(cold) - felt
  const core = mean(look.past.core, 10)
  cooling.points.push(over === null ? null : Math.round(over * 1000) / 1000)
  cooling.corePoints.push(core === null || felt === null ? null : Math.round((core - felt) * 1000) / 1000)
  if (felt !== null) noteWarmth(cooling, look, felt, cold)
  cooling.wallOff ??= fellOff(cooling, over) ?? (felt === null ? null : neverWarm(cooling, look, felt))
  cooling.fast ??= fallsFast(cooling)
  const known = felt !== null && over !== null && !airIsOld(cooling, look)
  const signs = known && elapsedMs >= learntFromMs ? nightSigns(cooling, look, air) : null
  cooling.coreOff ||= signs !== null && coreHangsOut(cooling)
  Object.assign(cooling, known ? boundOf(cooling, look, felt, signs) : unbound)
  leaks(cooling, look, over, elapsedMs)
}

function lookBack(look: Look, cold: ColdStart, felt: number, firstK: number, minutes: number): Before {
  const share = (wallC: number | null): number | null =>
    wallC === null ? null : Math.max(0, Math.min(3, (wallC - offsetK(cold) - felt) / Math.max(firstLeastK, firstK)))
  const charge = chargeMass(look.config, look.facts.charge)
  return {
    hourShare: share(mean(look.past.wall, 30, 45 + minutes)),
    threeHoursShare: share(mean(look.past.wall, 30, 165 + minutes)),
    fireC: mean(look.past.firebox, 180, minutes),
    smokeC: mean(look.past.smoke, 30, minutes),
    burntH: look.litAt === null ? usualBurnH : Math.max(1, (look.at - look.litAt) / hourMs),
    woodKg: charge.assumed ? null : charge.dryKg,
    coldKnown: cold.wallOverAirK !== null,
  }
}

/** Beyond this the probes are not off by a little, one of them stood in the sun or by the fire. Own judgement. */
const offsetK = (cold: ColdStart): number => Math.max(-6, Math.min(6, cold.wallOverAirK ?? 0))

/** What was learnt, was learnt from there on. */
const learntFromMs = 5 * hourMs
const firstWithinMs = 4 * hourMs
const pipeCoolsMs = 40 * 60_000
/** Without a word of the air for so long, what the cover felt is no longer known. */
const airHoldsMs = hourMs
export const airIsOld = ({ airAt }: Cooling, look: Look): boolean => airAt === null || look.at - airAt > airHoldsMs

/** From trials, no source. */
const wallRiseK = 5
/** Steel that was bared and stands in the sun: 850 of 1,000 W/m² taken up, some 20 W/(m² K) given to air and inwards. Own balance, no source. */
export const sunMostK = 45

function leaks(cooling: Cooling, look: Look, over: number | null, elapsedMs: number): void {
  const core = mean(look.past.core, 10)
  const firebox = mean(look.past.firebox, 10)
  if (elapsedMs < hourMs) return
  const rises: Reason[] = []
  const wall = mean(look.past.wall, 10)
  if (over !== null && wall !== null) {
    const low = (cooling.lowestK = Math.min(cooling.lowestK ?? over, over))
    const lowC = (cooling.wallLowC = Math.min(cooling.wallLowC ?? wall, wall))
    const beside = wall - (airC(look)?.value ?? wall)
    const lowBeside = (cooling.lowestBesideK = Math.min(cooling.lowestBesideK ?? beside, beside))
    const limit = Math.max(look.facts.openedAt === null ? wallRiseK : sunMostK, 0.04 * low)
    // over what the cover felt, over the air beside it, and by itself: a night cools the air before the earth, a day warms all
    const rise = Math.min(over - low, beside - lowBeside, wall - lowC)
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
    else rises.push(...mouthRises(cooling, look, firebox - low, firebox))
  }
  cooling.rose = rises.length > 0 ? rises : null
  cooling.relit = rises.some((r) => (r.value ?? 0) > 40) ? rises : null
  cooling.hasRelit ??= cooling.relit
  // a wall that was bared tells nothing by how it falls
  const bared = look.facts.openedAt !== null
  if (!bared) Object.assign(cooling, slowing(cooling, look, over))
  cooling.told ||= cooling.slow !== null || cooling.rose !== null
  cooling.burnt ||= cooling.told || cooling.dawdles !== null
}

/** Clear of the air and faster than sun on the mouth, K and K/h; embers that flicker, as a share of how warm it lies over the air. Own judgement. */
const mouthRiseK = 10
const mouthRiseKPerH = 15
const flickers = 0.25

/** The mouth is where air gets in: a fire there is seen by the firebox long before the wall. */
function mouthRises(cooling: Cooling, look: Look, riseK: number, firebox: number): Reason[] {
  const air = airC(look)
  if (air === null) return []
  const beside = firebox - air.value
  const low = (cooling.fireboxLowBesideK = Math.min(cooling.fireboxLowBesideK ?? beside, beside))
  const limit = Math.max(mouthRiseK, flickers * low)
  const rate = (slope(look.past.firebox, 30) ?? 0) - Math.max(0, slope(look.past.ambient, 30) ?? slope(look.past.outlet, 30) ?? 0)
  return Math.min(riseK, beside - low) > limit && rate > mouthRiseKPerH ? [{ code: 'firebox-rose', value: riseK, limit }] : []
}

/**
 * Of 136 tight nights that were called ten fell faster over four hours from the fifth on. A doubt, not a hold: held for 30 h the call came 1.4 h later
 * in all (median), and of 47 walls that lost touch or ran ahead, and would be opened over 50 °C, 26 were kept shut.
 */
const fastPerH = 0.21
const fastFrom = 54
const fastLeastK = 8

function fallsFast(cooling: Cooling): Reason[] | null {
  const last = cooling.points.length - 1
  if (last < fastFrom || (cooling.points[last] ?? 0) < fastLeastK) return null
  const rate = ratePerH(cooling, last - 24, last)
  return rate !== null && rate > fastPerH ? [{ code: 'wall-falls-fast', value: rate, limit: fastPerH }] : null
}

/** Notes the wall at the edges that are past; those before the air was known from the minutes that are kept. */
function noteWarmth(cooling: Cooling, look: Look, felt: number, cold: ColdStart): void {
  const step = cooling.points.length - 1
  for (let edge = edges[cooling.warmthK.length]; edge !== undefined && edge <= step; edge = edges[cooling.warmthK.length]) {
    const wall = mean(look.past.wall, 10, 10 * (step - edge))
    cooling.warmthK.push(wall === null ? null : Math.round((wall - offsetK(cold) - felt) * 1000) / 1000)
  }
}

/** Of the time that this kiln's own rate would take so much passes in any case: the bound comes down faster than the wall as more is known. */
const surelyPart = 0.8
/** A wall near the air falls in fits; slower than this per hour tells nothing of the inside. */
const leastFallPerH = 0.1

/**
 * Before when no call can come, ms: the least wait, and most of the time that the bound still needs at this kiln's faster rate. Told as the latest of
 * the night so far it never moves earlier; of 300 fresh nights of `npm run sealed` 2 of 176 calls came before it. It is no leave to open at
 * that hour.
 */
export function notBefore(cooling: Cooling, look: Look): Ms | null {
  const { openHottestC, openMinimumWaitH } = look.config.limits
  const felt = cooling.feltC
  const last = cooling.points.length - 1
  if (felt === null || cooling.hottestC === null || last < 12) return null
  const rate = Math.max(
    leastFallPerH,
    ratePerH(cooling, Math.max(6, last - 24), last) ?? 0,
    ratePerH(cooling, Math.max(6, last - 48), last) ?? 0,
  )
  const over = cooling.hottestC - felt
  const target = Math.max(3, openHottestC - felt)
  const waited = cooling.sealedAt + openMinimumWaitH * hourMs
  // beside a core probe the bound leaps down once it is learnt: the wall's rate tells nothing of when
  if (!cooling.coreOff && cooling.corePoints.some((point) => point !== null)) return waited
  return Math.max(waited, look.at + (surelyPart * Math.log(Math.max(over, target) / target) * hourMs) / rate)
}

export const coolingStepMs = tenMinutesMs
