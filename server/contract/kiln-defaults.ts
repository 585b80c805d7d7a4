import { defaultLimits } from './fold.ts'
import type { KilnConfig } from './fold.ts'

/** What holds the drip where nobody said, L. Common practice, no source. */
export const usualBottleL = 5

/** The kiln that is assumed where nobody said anything: a 200-litre drum under earth whose small fire is kept to the end. */
export function defaultKilnConfig(kiln = 'kiln-1'): KilnConfig {
  return {
    kiln,
    name: '',
    volumeL: 200,
    bottleL: usualBottleL,
    cover: 'earth',
    way: 'kept',
    charge: {},
    roles: {},
    calibration: {},
    limits: { ...defaultLimits },
    worth: { good: 1, tarry: -2, watery: -0.25 }, // common practice, no source: a late stop costs six times an early one
    altitudeM: 0,
    seed: 1,
  }
}
