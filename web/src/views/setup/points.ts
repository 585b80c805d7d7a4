import type { Calibration } from '../../../../server/contract/fold.ts'
import { onePoint, twoPoints, type CalibrationProblem, type Steady } from '../../lib/domain.ts'

/** A number counts as standing still when it moved by less than this in so long (common practice, no source). */
export const stillK = 0.5
export const stillForS = 20

export const isStill = ({ spreadK, forS }: Steady): boolean => forS >= stillForS && spreadK < stillK

export interface Points {
  iceC: number | null
  boilingC: number | null
}

/** What the points give. @param boilsAtC where water boils at the kiln's height; null while nothing was measured */
export function calibrationOf({ iceC, boilingC }: Points, boilsAtC: number): Calibration | CalibrationProblem | null {
  const ice = iceC === null ? null : { readC: iceC, trueC: 0 } // instrument facts 3.2
  const boiling = boilingC === null ? null : { readC: boilingC, trueC: boilsAtC }
  if (ice && boiling) return twoPoints(ice, boiling)
  const only = ice ?? boiling
  return only === null ? null : onePoint(only)
}

/** To four and two digits: finer is more than water can tell. */
export const rounded = ({ gain, offset }: Calibration): Calibration => ({
  gain: Math.round(gain * 10_000) / 10_000,
  offset: Math.round(offset * 100) / 100,
})
