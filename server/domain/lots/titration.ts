import type { Checked } from '../../contract/entry-problems.ts'
import { accept, outside, problem, refuse } from '../entered/number.ts'

/** Acetic acid, g/mol: 1 mL of 1 mol/L sodium hydroxide meets 60.05 mg of it (pharmacopoeia text; from memory). */
const aceticGPerMol = 60.05

export interface Titration {
  /** Sample as taken: by volume (mL) or by mass (g). */
  sample: { ml: number } | { g: number }
  /** Sodium hydroxide, mol/L. */
  baseMolPerL: number
  baseMl: number
  /** What the same water took without the sample. */
  blankMl?: number
  /** When the sample was thinned first: taken `takenMl` of `madeUpToMl`. */
  thinned?: { takenMl: number; madeUpToMl: number }
}

/** Titratable acidity as acetic acid: g per 100 mL for a sample by volume, % by mass for one by mass. */
export function acidityByTitration(run: Titration): Checked<{ pct: number; per: '100 mL' | '100 g' }> {
  const amount = 'ml' in run.sample ? run.sample.ml : run.sample.g
  const blankMl = run.blankMl ?? 0
  const wrong = [
    ...outside('sample', amount, 0.01, 10_000, 'ml' in run.sample ? 'mL' : 'g'),
    ...outside('baseMolPerL', run.baseMolPerL, 0.001, 5, 'mol/L'),
    ...outside('baseMl', run.baseMl, 0, 1000, 'mL'),
    ...outside('blankMl', blankMl, 0, 100, 'mL'),
  ]
  if (blankMl > run.baseMl) wrong.push(problem('too-large', 'blankMl', { value: blankMl, high: run.baseMl, unit: 'mL' }))
  if (run.thinned !== undefined && !(run.thinned.takenMl > 0 && run.thinned.takenMl <= run.thinned.madeUpToMl)) {
    wrong.push(problem('too-large', 'takenMl', { value: run.thinned.takenMl, low: 0, high: run.thinned.madeUpToMl, unit: 'mL' }))
  }
  if (wrong.length > 0) return refuse(...wrong)
  const share = run.thinned === undefined ? 1 : run.thinned.takenMl / run.thinned.madeUpToMl
  const acidG = ((run.baseMl - blankMl) * run.baseMolPerL * aceticGPerMol) / 1000
  return accept({ pct: (100 * acidG) / (amount * share), per: 'ml' in run.sample ? '100 mL' : '100 g' })
}
