import type { Calibration } from '../../contract/fold.ts'

export interface CalibrationPoint {
  /** As the service shows it uncalibrated, linearised. */
  readC: number
  trueC: number
}
export type CalibrationProblem = 'points-too-near' | 'gain-too-far' | 'offset-too-far'

/** Guard rails of instrument facts 3.3: beyond them a wiring fault is more likely than a probe that is off. */
const leastApartK = 50
const furthestGain = 0.03
const furthestOffsetK = 8

export const calibrate = (calibration: Calibration | undefined, value: number): number =>
  calibration === undefined ? value : calibration.gain * value + calibration.offset

/** One point (ice, or boiling water) can only set the offset. */
export function onePoint({ readC, trueC }: CalibrationPoint): Calibration | CalibrationProblem {
  const offset = trueC - readC
  return Math.abs(offset) > furthestOffsetK ? 'offset-too-far' : { gain: 1, offset }
}

/** Two points, at least 50 K apart (instrument facts 3.3). */
export function twoPoints(a: CalibrationPoint, b: CalibrationPoint): Calibration | CalibrationProblem {
  if (Math.abs(b.trueC - a.trueC) < leastApartK || Math.abs(b.readC - a.readC) < leastApartK) return 'points-too-near'
  const gain = (b.trueC - a.trueC) / (b.readC - a.readC)
  const offset = a.trueC - gain * a.readC
  if (Math.abs(gain - 1) > furthestGain) return 'gain-too-far'
  return Math.abs(offset) > furthestOffsetK ? 'offset-too-far' : { gain, offset }
}
