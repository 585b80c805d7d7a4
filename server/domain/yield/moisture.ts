import type { Checked } from '../../contract/entry-problems.ts'
import { accept, outside, problem, refuse } from '../entered/number.ts'

// Wet basis: water over the whole; dry basis: water over the oven-dry wood (Practical Action, Charcoal production; FAO Forestry Paper 41).

/** @param wetPct 0 to 95 %, wet basis. @returns % dry basis; 20 gives 25. Above 100 it can only be a dry-basis figure, and is refused as such. */
export function wetToDryBasis(wetPct: number): Checked<number> {
  if (wetPct >= 100 && wetPct <= 400)
    return refuse(problem('moisture-not-wet-basis', 'moisturePct', { value: wetPct, wet: round1(toWet(wetPct)) }))
  const wrong = outside('moisturePct', wetPct, 0, 95, '%')
  return wrong.length > 0 ? refuse(...wrong) : accept((100 * wetPct) / (100 - wetPct))
}

/** @param dryPct 0 to 1900 %, dry basis. @returns % wet basis; 25 gives 20. */
export function dryToWetBasis(dryPct: number): Checked<number> {
  const wrong = outside('moisturePct', dryPct, 0, 1900, '%')
  return wrong.length > 0 ? refuse(...wrong) : accept(toWet(dryPct))
}

function toWet(dryPct: number): number {
  return (100 * dryPct) / (100 + dryPct)
}

function round1(value: number): number {
  return Math.round(value * 10) / 10
}

/** One sample weighed as it is and again when oven-dry (103 °C until it loses no more; a kitchen oven does). Any unit of mass, twice the same. */
export function moistureByWeighing(asIs: number, ovenDry: number): Checked<{ wetPct: number; dryPct: number }> {
  const wrong = [...outside('asIs', asIs, 1e-6, 1e9), ...outside('ovenDry', ovenDry, 1e-6, 1e9)]
  if (wrong.length > 0) return refuse(...wrong)
  if (ovenDry > asIs) return refuse(problem('heavier-when-dry', 'ovenDry', { asIs, ovenDry }))
  return accept({ wetPct: (100 * (asIs - ovenDry)) / asIs, dryPct: (100 * (asIs - ovenDry)) / ovenDry })
}

/** Oven-dry mass of a charge, in the unit of `mass`. */
export function dryMass(mass: number, wetPct: number): number {
  return (mass * (100 - wetPct)) / 100
}

/** What is left of a green mass when it has dried from one wet-basis moisture to another. */
export function massAfterDrying(mass: number, fromWetPct: number, toWetPct: number): number {
  return dryMass(mass, fromWetPct) / ((100 - toWetPct) / 100)
}
