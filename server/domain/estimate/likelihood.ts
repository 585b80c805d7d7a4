import type { DripLook, SmokeLook } from '../../contract/vocabulary.ts'
import * as L from '../kiln/layout.ts'
import type { History, Seen } from './shape.ts'

/** Readings are compared every third beat (six minutes); neighbours tell nearly the same, and the model is wrong in its own way: both temper. */
export const compareEvery = 3

export interface Trust {
  wall: number
  smoke: number
  wallK: number
  wallShare: number
  smokeK: number
  smokeShare: number
  looks: number
}

export const defaultTrust: Trust = { wall: 0.25, smoke: 0.6, wallK: 10, wallShare: 0.06, smokeK: 5, smokeShare: 0.05, looks: 1 }

/** Log of a Student density with four degrees of freedom, up to a constant: a spike or a wrong hour costs little. */
function student(r: number): number {
  return -2.5 * Math.log(1 + (r * r) / 4)
}

function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x))
}

/** Shares of acid and tar in the condensate of the moment. */
export function acidShare(x: Float64Array, o: number): number {
  const all = (x[o + L.meanWater] as number) + (x[o + L.meanAcid] as number) + (x[o + L.meanTar] as number)
  return all > 1e-7 ? (x[o + L.meanAcid] as number) / all : 0
}
export function tarShare(x: Float64Array, o: number): number {
  const all = (x[o + L.meanWater] as number) + (x[o + L.meanAcid] as number) + (x[o + L.meanTar] as number)
  return all > 1e-7 ? (x[o + L.meanTar] as number) / all : 0
}

/** Degree of charring, 0 raw .. 1 through: what has left of the parts that leave. */
export function charred(x: Float64Array, o: number, dryKg: number): number {
  let left = 0
  for (let z = 0; z < L.zoneCount; z++) {
    const b = o + z * L.zoneStride
    for (let j = 0; j < 3; j++) left += (x[b + L.surfaceParts + j] as number) + (x[b + L.coreParts + j] as number)
  }
  return 1 - left / dryKg
}

const upper: Partial<Record<DripLook, number>> = { pale: 0.06, amber: 0.14, dark: 0.28 }
const lower: Partial<Record<DripLook, number>> = { amber: 0.06, dark: 0.14, black: 0.28 }

/** Probability of a look of the drip: clear below 3 % acids, then by tar (classes of the job; 14 % is where it turns dark). */
export function dripChance(look: DripLook, acid: number, tar: number): number {
  if (look === 'none') return 1
  const watery = logistic(Math.log(0.03 / (acid + 1e-4)) / 0.35)
  const lnTar = Math.log(tar + 1e-4)
  const over = (limit: number): number => logistic((lnTar - Math.log(limit)) / 0.3)
  const below = upper[look]
  const above = lower[look]
  const byTar = (above === undefined ? 1 : over(above)) - (below === undefined ? 0 : over(below))
  const chance = look === 'clear' ? watery * (1 - over(0.14)) : look === 'pale' ? (1 - watery) * byTar : byTar
  return 0.04 + 0.96 * Math.max(0, chance)
}

/** Probability of a look of the smoke: white while watery, yellow with acids, blue and clear as charring ends (trade facts 1.2). */
export function smokeChance(look: SmokeLook, acid: number, char: number): number {
  if (look === 'none') return 1
  const watery = logistic(Math.log(0.04 / (acid + 1e-4)) / 0.5)
  const late = logistic((char - 0.75) / 0.07)
  const over = logistic((char - 0.95) / 0.02)
  const chance =
    look === 'white'
      ? watery * (1 - late) + 0.2 * (1 - watery) * (1 - late)
      : look === 'yellow'
        ? (1 - watery) * (1 - late)
        : look === 'blue'
          ? late * (1 - over)
          : over
  return 0.1 + 0.9 * Math.max(0, chance)
}

/** Log-likelihood of one beat's readings and looks for one kiln state. */
export function fitOfMinute(
  x: Float64Array,
  o: number,
  dryKg: number,
  history: History,
  seen: readonly Seen[],
  beat: number,
  trust: Trust,
): number {
  let fit = 0
  if (beat % compareEvery === 0) {
    const wall = history.wall[beat] as number
    if (wall === wall)
      fit += trust.wall * student((wall - (x[o + L.wallProbeC] as number)) / (trust.wallK + trust.wallShare * Math.abs(wall - 20)))
    const smoke = history.smoke[beat] as number
    if (smoke === smoke)
      fit += trust.smoke * student((smoke - (x[o + L.smokeProbeC] as number)) / (trust.smokeK + trust.smokeShare * Math.abs(smoke - 20)))
    else {
      // the outlet is never hotter than the smoke
      const over = (history.outlet[beat] as number) - (x[o + L.smokeProbeC] as number)
      if (over > 0) fit += trust.smoke * student(over / 5)
    }
  }
  for (const s of seen) {
    if (s.beat !== beat) continue
    if (s.drip !== undefined) fit += trust.looks * Math.log(dripChance(s.drip, acidShare(x, o), tarShare(x, o)))
    if (s.smoke !== undefined) fit += 0.5 * trust.looks * Math.log(smokeChance(s.smoke, acidShare(x, o), charred(x, o, dryKg)))
  }
  return fit
}
