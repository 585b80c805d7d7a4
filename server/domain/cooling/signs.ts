import { mean } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import type { Cooling } from './state.ts'

// What a night tells of the hottest part: how the wall fell, in logarithms of its excess over what the cover felt, and what stood beside it.

const perHour = 6
/** Added before logarithms are taken, K: near the air the weather and the probes' own errors count as much as the kiln. */
export const softK = 10
export const coldestK = -4
/** A wall that was hardly warm at the seal is no measure of its fall, K. */
export const firstLeastK = 10
/** A gap of an hour is bridged. */
const bridgePoints = 6

/** The point nearest to `index`, earlier before later; null where none is near. */
function near(points: readonly (number | null)[], index: number): number | null {
  const at = Math.max(0, index)
  for (let off = 0; off <= bridgePoints; off++) {
    const before = points[at - off] ?? null
    if (before !== null) return before
    const after = points[at + off] ?? null
    if (after !== null) return after
  }
  return null
}

/** Logarithm of a warmth over the air, softened near none. */
const softLog = (overK: number): number => Math.log(Math.max(coldestK, overK) + softK)

/** What stands over what the cover felt, mean of the last half hour, K. */
export function nowK(points: readonly (number | null)[]): number | null {
  const last = points.slice(-3).filter((v): v is number => v !== null)
  return last.length === 0 ? null : last.reduce((a, b) => a + b, 0) / last.length
}

/** In the order that `npm run sealed-teach` taught; null where the wall or the air is not known. */
export function nightSigns(cooling: Cooling, look: Look, air: { value: number; measured: boolean } | null): number[] | null {
  const { points, firstK, feltC, before } = cooling
  const now = nowK(points)
  const last = points.length - 1
  if (now === null || firstK === null || feltC === null || last < perHour) return null
  const first = softLog(firstK)
  const nowLog = softLog(now)
  const sinceSeal = (h: number): number => {
    const v = near(points, Math.min(h * perHour, last))
    return v === null ? 0 : softLog(v) - first
  }
  const ago = (h: number): number => {
    const v = near(points, last - h * perHour)
    return v === null ? 0 : softLog(v) - nowLog
  }
  const airC = air?.value ?? feltC
  const mouth = (skip: number): number => {
    const firebox = mean(look.past.firebox, 10, skip)
    return firebox === null ? 0 : Math.log(Math.max(1, Math.min(400, firebox - airC)) / 2)
  }
  const smoke = mean(look.past.smoke, 20)
  const core = mean(look.past.core, 20)
  const lost = points.reduce<number>((sum, v) => sum + Math.max(0, v ?? 0), 0) / perHour
  return [
    Math.log(last / perHour),
    first,
    nowLog,
    ...[1, 2, 4, 8].map(sinceSeal),
    ...[1, 2, 3, 5, 8, 12, 18, 24].map(ago),
    (before.hourShare ?? 1) - 1,
    (before.threeHoursShare ?? 1) - 1,
    Math.log(before.burntH),
    airC - feltC,
    (cooling.quickFeltC ?? feltC) - feltC,
    (cooling.slowFeltC ?? feltC) - feltC,
    air?.measured === true ? 1 : 0,
    before.coldKnown ? 1 : 0,
    mouth(0),
    mouth(180),
    smoke === null ? 0 : Math.max(-5, Math.min(20, smoke - airC)) / 3,
    core === null ? 0 : Math.max(-5, Math.min(60, core - feltC)) / 20,
    core === null ? 0 : 1,
    cooling.burnt ? 1 : 0,
    before.fireC === null ? 0 : (before.fireC - 600) / 100,
    (feltC - 17) / 8,
    Math.log(Math.max(1, lost) / Math.max(firstLeastK, firstK)),
    before.smokeC === null ? 0 : (before.smokeC - 200) / 100,
    before.smokeC === null ? 0 : 1,
    before.woodKg === null ? 0 : Math.log(before.woodKg / 55),
    before.woodKg === null ? 0 : 1,
  ]
}

/**
 * The same beside a probe in the middle of the charge: how it fell, and how the wall fell beside it. A fire at an end keeps both from falling as
 * they fell. `night` are the signs above; null where the probe says nothing.
 */
export function coreSigns(cooling: Cooling, night: readonly number[]): number[] | null {
  const { points, corePoints, firstK } = cooling
  const now = nowK(corePoints)
  const wall = nowK(points)
  const last = corePoints.length - 1
  if (now === null || wall === null || firstK === null || last < perHour) return null
  const nowLog = softLog(now)
  const ago = (h: number): number => {
    const v = near(corePoints, last - h * perHour)
    return v === null ? 0 : softLog(v) - nowLog
  }
  const over = (h: number): number => {
    const core = near(corePoints, last - h * perHour)
    const beside = near(points, last - h * perHour)
    return core === null || beside === null ? 0 : softLog(core) - softLog(beside)
  }
  const early = near(corePoints, perHour)
  return [
    ...night,
    nowLog,
    ...[1, 2, 3, 5, 8, 12, 18].map(ago),
    ...[0, 1, 2, 4, 8].map(over),
    early === null ? 0 : softLog(early) - softLog(firstK),
    early === null ? 0 : softLog(early) - nowLog,
  ]
}
