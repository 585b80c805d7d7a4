import type { Estimate, InsideSlice } from '../../contract/fold.ts'
import * as L from '../kiln/layout.ts'
import { dryKgAt, valuesLength } from '../kiln/parameters.ts'
import { acidShare, charred, tarShare } from './likelihood.ts'
import type { EnsembleState } from './shape.ts'
import { memberCount } from './size.ts'

// What a slice of the drum is called: wet below 75 °C with water to lose, drying until it breaks down, charcoal once little is left to go.
const wetBelowC = 75
const wetOver = 0.15 // kg water per kg dry wood
const breaking = 0.95 // share of the wood's own parts left
const through = 0.15

function sliceIs(x: Float64Array, b: number, zoneDryKg: number): 0 | 1 | 2 | 3 {
  let left = 0
  for (let j = 0; j < 3; j++) left += (x[b + L.surfaceParts + j] as number) + (x[b + L.coreParts + j] as number)
  if (left < through * zoneDryKg) return 3
  if (left < breaking * zoneDryKg) return 2
  const moist = ((x[b + L.surfaceWater] as number) + (x[b + L.coreWater] as number)) / zoneDryKg
  return (x[b + L.surfaceC] as number) < wetBelowC && moist > wetOver ? 0 : 1
}

class Moments {
  mean = 0
  square = 0
  add(weight: number, value: number): void {
    this.mean += weight * value
    this.square += weight * value * value
  }
  sd(): number {
    return Math.sqrt(Math.max(0, this.square - this.mean * this.mean))
  }
}

/** Weighted mean and spread of the members now. */
export function readMembers(s: EnsembleState): Estimate {
  const [smoke, acid, tar, char] = [new Moments(), new Moments(), new Moments(), new Moments()]
  const x = s.members.kilns
  let flow = 0
  let total = 0
  const inside: InsideSlice[] = Array.from({ length: L.zoneCount }, () => [0, 0, 0, 0])
  for (let m = 0; m < memberCount; m++) {
    const o = m * L.stateLength
    const w = s.weights[m] as number
    const dry = s.members.values[m * valuesLength + dryKgAt] as number
    smoke.add(w, x[o + L.smokeC] as number)
    acid.add(w, acidShare(x, o))
    tar.add(w, tarShare(x, o))
    char.add(w, charred(x, o, dry))
    flow += w * 3600 * ((x[o + L.meanWater] as number) + (x[o + L.meanAcid] as number) + (x[o + L.meanTar] as number))
    total += w * (x[o + L.condensate] as number)
    for (const [z, slice] of inside.entries()) slice[sliceIs(x, o + z * L.zoneStride, dry / L.zoneCount)] += w
  }
  return {
    smokeC: smoke.mean,
    smokeSd: smoke.sd(),
    acidShare: acid.mean,
    acidSd: acid.sd(),
    tarShare: tar.mean,
    tarSd: tar.sd(),
    condensateKgH: flow,
    condensateKg: total,
    charShare: Math.max(0, char.mean),
    charSd: char.sd(),
    inside,
    from: 'ensemble',
  }
}
