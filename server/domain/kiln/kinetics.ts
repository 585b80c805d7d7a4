// Breakdown of wood in three parts after Miller and Bellan 1997 (trade facts 9.1.6): first-order steps, k = A exp(-E/RT).
// Each part first turns active (k1), then goes the tar way (k2) or the char and gas way (k3); one step with the slower of the two stands for both.

const gasConstant = 8.314e-3 // kJ/(mol K)
const steps = [
  { a1: 2.1e16, e1: 186.7, a2: 8.75e15, e2: 202.4, a3: 2.6e11, e3: 145.7 }, // hemicellulose
  { a1: 2.8e19, e1: 242.4, a2: 3.28e14, e2: 196.5, a3: 1.3e10, e3: 150.5 }, // cellulose
  { a1: 9.6e8, e1: 107.6, a2: 1.5e9, e2: 143.8, a3: 7.7e6, e3: 111.4 }, // lignin
] as const

/** Rate of part 0 hemicellulose, 1 cellulose, 2 lignin, 1/s. */
export function breakdownRate(part: 0 | 1 | 2, celsius: number): number {
  const kelvin = celsius + 273.15
  const s = steps[part]
  const active = s.a1 * Math.exp(-s.e1 / (gasConstant * kelvin))
  const onward = s.a2 * Math.exp(-s.e2 / (gasConstant * kelvin)) + s.a3 * Math.exp(-s.e3 / (gasConstant * kelvin))
  return 1 / (1 / active + 1 / onward)
}

/** Shares of hemicellulose, cellulose and lignin in hardwood (trade facts 9.1, mix used with 9.1.6). */
export const partShares = [0.28, 0.48, 0.24] as const

/** What a kilogram of each part becomes: char, water, light acids and alcohols, tar; the rest is gas.
 *  Chosen so that the whole wood gives 0.33 char, 0.21 water, 0.11 light organics, 0.13 tar (trade facts 3.1.4, 3.1.5, 3.4.6, 8.9). */
export const yields = [
  { char: 0.26, water: 0.24, acid: 0.2, tar: 0.05 },
  { char: 0.28, water: 0.23, acid: 0.08, tar: 0.19 },
  { char: 0.52, water: 0.13, acid: 0.05, tar: 0.14 },
] as const

export const tableFromC = 120
export const tableStepK = 2
export const tableLength = 350

/** A zone holds wood at many temperatures: its mean rate rises less steeply than that of one piece. Exponent and pivot: own judgement. */
export const blur = 0.6
const pivotPerS = 5e-4

/** Mean rate of a whole zone, 1/s. */
export function zoneRate(part: 0 | 1 | 2, celsius: number): number {
  return pivotPerS * Math.exp(blur * Math.log(breakdownRate(part, celsius) / pivotPerS))
}

/** The zone rates on a grid of 2 K from 120 °C, one row a part: the exponentials are too dear inside the ensemble. */
export const rateTable = Float64Array.from({ length: 3 * tableLength }, (_, i) =>
  zoneRate(Math.floor(i / tableLength) as 0 | 1 | 2, tableFromC + (i % tableLength) * tableStepK),
)

/** Where in the table a temperature lies: whole and fractional index, held inside. */
export function tableIndex(celsius: number): number {
  const i = (celsius - tableFromC) / tableStepK
  return i < 0 ? -1 : i > tableLength - 2 ? tableLength - 2 : i
}
