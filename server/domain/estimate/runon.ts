import type { KilnConfig } from '../../contract/fold.ts'
import * as L from '../kiln/layout.ts'
import { dryKgAt, valuesLength } from '../kiln/parameters.ts'
import { step, type Drive } from '../kiln/step.ts'
import { charred } from './likelihood.ts'
import type { Members } from './shape.ts'
import { beatS, memberCount } from './size.ts'
import { worthPerH } from './worth.ts'

export const runners = 24
/** Horizon of a run-on, in points of ten minutes: ten hours. */
export const points = 60
export const pointMinutes = 10
/** Longer steps than the members live in: what lies hours ahead is known to hours. */
const stepsPerPoint = 3

/** A forecast in the making: some members run on without readings, a slice at each grid step so that no step takes long. */
export interface RunOn {
  /** Beat of the firing it started from; -1 when none runs. */
  from: number
  point: number
  fireC: number
  outletC: number
  values: Float64Array
  kilns: Float64Array
  /** By point and runner: worth an hour, smoke °C, degree of charring. */
  worth: Float32Array
  smoke: Float32Array
  char: Float32Array
}

export function emptyRunOn(): RunOn {
  return {
    from: -1,
    point: 0,
    fireC: 0,
    outletC: 0,
    values: new Float64Array(runners * valuesLength),
    kilns: new Float64Array(runners * L.stateLength),
    worth: new Float32Array(points * runners),
    smoke: new Float32Array(points * runners),
    char: new Float32Array(points * runners),
  }
}

/** Starts a run-on from members drawn evenly by weight. */
export function startRunOn(run: RunOn, members: Members, weights: Float64Array, beat: number, fireC: number, outletC: number): void {
  let sum = 0
  let m = 0
  for (let k = 0; k < runners; k++) {
    const mark = (k + 0.5) / runners
    while (m < memberCount - 1 && sum + (weights[m] as number) < mark) sum += weights[m++] as number
    run.values.set(members.values.subarray(m * valuesLength, (m + 1) * valuesLength), k * valuesLength)
    run.kilns.set(members.kilns.subarray(m * L.stateLength, (m + 1) * L.stateLength), k * L.stateLength)
  }
  run.from = beat
  run.point = 0
  run.fireC = fireC
  run.outletC = outletC
}

/** Runs all runners on by one point (ten minutes). */
export function runPoint(run: RunOn, worth: KilnConfig['worth'], drive: Drive, scratch: Float64Array): void {
  drive.fireC = run.fireC
  drive.outletC = run.outletC
  drive.seconds = (pointMinutes * 60) / stepsPerPoint
  drive.hours = (run.from * beatS) / 3600 + ((run.point + 0.5) * pointMinutes) / 60
  for (let k = 0; k < runners; k++) {
    const o = k * L.stateLength
    const q = k * valuesLength
    let sum = 0
    for (let s = 0; s < stepsPerPoint; s++) {
      step(run.kilns, o, run.values, q, drive, scratch)
      sum += worthPerH(run.kilns, o, worth)
    }
    const i = run.point * runners + k
    run.worth[i] = sum / stepsPerPoint
    run.smoke[i] = run.kilns[o + L.smokeC] as number
    run.char[i] = charred(run.kilns, o, run.values[q + dryKgAt] as number)
  }
  run.point++
}
