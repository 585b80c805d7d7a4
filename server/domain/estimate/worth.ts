import type { KilnConfig } from '../../contract/fold.ts'
import * as L from '../kiln/layout.ts'

function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x))
}

// Limits of the classes (the job: watery under 3 % acids, tar-laden over 14 % tar), softened by what the model's shares are off by.
const wateryBelow = 0.03
const tarryAbove = 0.14
const acidBlur = 0.3
const tarBlur = 0.2

/** Worth an hour of what a kiln drips now, in kilograms of good condensate. */
export function worthPerH(x: Float64Array, o: number, worth: KilnConfig['worth']): number {
  const water = x[o + L.meanWater] as number
  const acid = x[o + L.meanAcid] as number
  const tar = x[o + L.meanTar] as number
  const all = water + acid + tar
  if (all < 1e-7) return 0
  const tarry = logistic(Math.log((tar / all + 1e-5) / tarryAbove) / tarBlur)
  const watery = (1 - tarry) * logistic(Math.log(wateryBelow / (acid / all + 1e-5)) / acidBlur)
  return 3600 * all * (worth.good * (1 - tarry - watery) + worth.tarry * tarry + worth.watery * watery)
}
