import type { Checked } from '../../contract/entry-problems.ts'
import type { Range } from '../../contract/plan.ts'
import { accept, outside, problem, refuse } from '../entered/number.ts'
import { dryMass } from './moisture.ts'

export interface Efficiency {
  /** Charcoal over the charge as loaded, %. */
  asLoadedPct: number
  /** Charcoal over the oven-dry charge, %. */
  dryPct: number
  /** The same with the fines taken off. */
  asLoadedWithoutFinesPct: number
  dryWithoutFinesPct: number
}

/** On both bases, with and without fines (Practical Action, Charcoal production: 10 kg from 100 kg at 20 % is 10 % and 12.5 %). */
export function kilnEfficiency(charge: { massKg: number; moisturePct: number }, charcoalKg: number, finesKg: number): Checked<Efficiency> {
  const wrong = [
    ...outside('massKg', charge.massKg, 0.1, 100_000, 'kg'),
    ...outside('moisturePct', charge.moisturePct, 0, 95, '%'),
    ...outside('charcoalKg', charcoalKg, 0, charge.massKg, 'kg'),
  ]
  if (wrong.length > 0) return refuse(...wrong)
  if (!(finesKg >= 0 && finesKg <= charcoalKg))
    return refuse(problem('too-large', 'finesKg', { value: finesKg, high: charcoalKg, unit: 'kg' }))
  const dryKg = dryMass(charge.massKg, charge.moisturePct)
  return accept({
    asLoadedPct: (100 * charcoalKg) / charge.massKg,
    dryPct: (100 * charcoalKg) / dryKg,
    asLoadedWithoutFinesPct: (100 * (charcoalKg - finesKg)) / charge.massKg,
    dryWithoutFinesPct: (100 * (charcoalKg - finesKg)) / dryKg,
  })
}

/** A given share of yield on the wet charge, seen on the dry one. */
export function dryBasisYield(asLoadedPct: number, moistureWetPct: number): number {
  return (100 * asLoadedPct) / (100 - moistureWetPct)
}

/** Achieved beside expected, both on the same basis. */
export function against(achieved: number, expected: Range): { verdict: 'below' | 'within' | 'above'; ofLikelyPct: number } {
  const verdict = achieved < expected.low ? 'below' : achieved > expected.high ? 'above' : 'within'
  return { verdict, ofLikelyPct: (100 * achieved) / expected.likely }
}
