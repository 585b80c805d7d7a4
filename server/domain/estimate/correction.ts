import { featureCount } from './features.ts'

/** A linear form over standardised features; the last number is the constant. */
export type Form = readonly number[]

/** What was correction for kilns with, or without, a smoke probe. */
export interface Correction {
  mean: readonly number[]
  sd: readonly number[]
  /** Log-odds of watery and of tar-laden against good. */
  watery: Form
  tarry: Form
  /** Smoke now, hundreds of °C, for kilns without a smoke probe: the members run warm, since smoke has a floor at the dew point and no ceiling. */
  smoke: readonly Form[]
}

/** Value of a form at features `x`. */
export function form(correction: Correction, weights: Form, x: Float64Array): number {
  let sum = (weights[featureCount] as number) ?? 0
  for (let i = 0; i < featureCount; i++) {
    const z = ((x[i] as number) - ((correction.mean[i] as number) ?? 0)) / ((correction.sd[i] as number) ?? 1)
    // far outside what was correction on, a feature says no more than at the edge
    sum += ((weights[i] as number) ?? 0) * Math.max(-3, Math.min(3, z))
  }
  return sum
}

/** Probabilities that the condensate of the moment is good, watery, tar-laden. */
export function classesNow(correction: Correction, x: Float64Array): { good: number; watery: number; tarry: number } {
  const watery = Math.exp(Math.min(30, form(correction, correction.watery, x)))
  const tarry = Math.exp(Math.min(30, form(correction, correction.tarry, x)))
  const all = 1 + watery + tarry
  return { good: 1 / all, watery: watery / all, tarry: tarry / all }
}

/** Smoke now as 7, 50 and 93 % values, °C. */
export function smokeNow(correction: Correction, x: Float64Array): [number, number, number] {
  const [low = 0, middle = 0, high = 0] = correction.smoke.map((f) => 100 * form(correction, f, x))
  return [Math.min(low, middle), middle, Math.max(high, middle)]
}
