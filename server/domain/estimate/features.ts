import { stateLength } from '../kiln/layout.ts'
import { acidShare, tarShare } from './likelihood.ts'
import type { EnsembleState } from './shape.ts'
import { beatS, memberCount } from './size.ts'

// What the learned correction looks at: the ensemble's own judgement, and what told most before (the-job.md): the heat that went in.

export const featureNames = [
  'tarryMembers', // log-odds of the share of members over 14 % tar
  'wateryMembers', // log-odds of the share of members under 3 % acids
  'tar',
  'acid',
  'smokeEstimated',
  'charred',
  'heatSince160',
  'hours',
  'wall',
  'heat',
  'smokeSpread',
  'sealIn',
  'stopIn',
  'wallOverSmoke',
  'smoke', // as read; with a smoke probe only
  'smokeOver', // read over estimated
] as const
export const featureCount = featureNames.length

/** Heat that went in per kilogram of dry wood, in kelvin-hours of firebox over outlet: since lighting, and since the wall passed 160 °C. */
export interface Heat {
  all: number
  since160: number
}

const usualDryKg = 54 // where mass or moisture was not recorded
const wallMark = 160

/** Adds a beat to the heat integrals. */
export function addHeat(s: EnsembleState): void {
  const h = s.history
  const k = h.length - 1
  const { massKg, moisturePct } = s.charge
  const dry = massKg === undefined ? usualDryKg : massKg * (1 - (moisturePct ?? 27) / 100)
  const wall = h.wall[k] as number
  const over = Math.max(0, (h.fire[k] as number) - (h.outlet[k] as number))
  const add = (over * beatS) / 3600 / dry
  s.heat.all += add
  if (s.heat.since160 > 0 || wall > wallMark) s.heat.since160 += add
}

function logOdds(share: number): number {
  return Math.log((share + 0.01) / (1.01 - share))
}

function last(column: Float32Array, length: number): number {
  for (let k = length - 1; k >= 0 && k > length - 16; k--) {
    const v = column[k] as number
    if (!Number.isNaN(v)) return v
  }
  return NaN
}

/** Smoke as read within the last three beats; NaN without a living probe. */
export function smokeRead(s: EnsembleState): number {
  return last(s.history.smoke.subarray(Math.max(0, s.history.length - 3)), Math.min(3, s.history.length))
}

/** The features now; `into` holds `featureCount` numbers. `smoke`, °C: as read or what stands in for it; NaN without either. */
export function featuresOf(s: EnsembleState, smoke: number, into: Float64Array): void {
  const e = s.estimate
  if (!e) {
    into.fill(0)
    return
  }
  let tarry = 0
  let watery = 0
  for (let m = 0; m < memberCount; m++) {
    const o = m * stateLength
    const w = s.weights[m] as number
    if (tarShare(s.members.kilns, o) > 0.14) tarry += w
    if (acidShare(s.members.kilns, o) < 0.03) watery += w
  }
  const hoursTo = (t: number | undefined, most: number): number =>
    t === undefined ? most : Math.min(most, Math.max(0, (t - s.at) / 3600000))
  const wallNow = last(s.history.wall, s.history.length)
  const wall = Number.isNaN(wallNow) ? 100 : wallNow
  into[0] = logOdds(tarry)
  into[1] = logOdds(watery)
  into[2] = Math.log(e.tarShare + 0.003)
  into[3] = Math.log(e.acidShare + 0.003)
  into[4] = e.smokeC / 100
  into[5] = 3 * e.charShare
  into[6] = Math.log(1 + s.heat.since160 / 10)
  into[7] = Math.log(1 + (s.history.length * beatS) / 3600)
  into[8] = wall / 100
  into[9] = s.heat.all / 30
  into[10] = e.smokeSd / 40
  into[11] = hoursTo(s.ranges.seal?.likely, 8) / 2
  into[12] = hoursTo(s.ranges.stop?.likely, 6)
  into[13] = (wall - e.smokeC) / 100
  into[14] = Number.isNaN(smoke) ? 0 : smoke / 100
  into[15] = Number.isNaN(smoke) ? 0 : (smoke - e.smokeC) / 30
}
