import type { Checked } from '../../contract/entry-problems.ts'
import { accept, outside, refuse } from '../entered/number.ts'

export interface Pieces {
  count: number
  lengthM: number
  thicknessMm: number
  /** Mass as it is over its volume, kg/m³; for green wood about basic density × (1 + dry-basis moisture). */
  densityKgPerM3: number
}

/** Round pieces laid in a kiln. @returns mass as loaded, solid volume, and how much of the kiln is wood (about half when stacked). */
export function chargeOfPieces(pieces: Pieces, kilnL: number): Checked<{ massKg: number; solidL: number; fillPct: number }> {
  const wrong = [
    ...outside('count', pieces.count, 1, 10_000),
    ...outside('lengthM', pieces.lengthM, 0.02, 5, 'm'),
    ...outside('thicknessMm', pieces.thicknessMm, 5, 600, 'mm'),
    ...outside('densityKgPerM3', pieces.densityKgPerM3, 150, 1400, 'kg/m³'),
    ...outside('kilnL', kilnL, 10, 100_000, 'L'),
  ]
  if (wrong.length > 0) return refuse(...wrong)
  const radiusM = pieces.thicknessMm / 2000
  const solidM3 = pieces.count * Math.PI * radiusM * radiusM * pieces.lengthM
  const solidL = 1000 * solidM3
  const fillPct = (100 * solidL) / kilnL
  // the densest packing of equal rods is pi / (2 sqrt 3) = 91 %: more does not go in
  const most = Math.floor((pieces.count * 90.69) / fillPct)
  const tooMany = outside('count', pieces.count, 0, most)
  return tooMany.length > 0 ? refuse(...tooMany) : accept({ massKg: solidM3 * pieces.densityKgPerM3, solidL, fillPct })
}

/** @param basicKgPerM3 oven-dry mass over green volume. @returns mass as it is over green volume, kg/m³. */
export function greenDensity(basicKgPerM3: number, dryBasisPct: number): number {
  return basicKgPerM3 * (1 + dryBasisPct / 100)
}
