import type { Charge } from '../../contract/fold.ts'

// What is unknown about a kiln, as standard normal numbers (latents) and as the physical values that the step uses.
// The spread of each is the width of the prior: wide enough that an unseen kiln lies inside. Where no source is named: own judgement.

export interface Unknown {
  name: string
  /** Physical median and the spread on the scale named. */
  median: number
  spread: number
  scale: 'log' | 'linear' | 'share'
}

export const unknowns = [
  { name: 'draught', median: 0.0076, spread: 0.38, scale: 'log' }, // dry gas, kg/s: heats a 200-litre charge in 5 to 12 h
  { name: 'inletShare', median: 0.88, spread: 0.12, scale: 'log' }, // gas at the charge over the firebox reading, both above ambient
  { name: 'fireWater', median: 0.065, spread: 0.35, scale: 'log' }, // kg water per kg dry fire gas: wood of 20 % burnt with twice the air
  { name: 'gasToWood', median: 0.074, spread: 0.4, scale: 'log' }, // kW/K, 8 m2 of wood at 5 to 10 W/(m2 K)
  { name: 'gasToWall', median: 0.0078, spread: 0.5, scale: 'log' }, // kW/K, 2 m2 of drum (trade facts 9.2.10)
  { name: 'woodToWall', median: 0.0039, spread: 0.45, scale: 'log' }, // kW/K, radiation and touch
  { name: 'wallToEarth', median: 0.0103, spread: 0.45, scale: 'log' }, // kW/K, trade facts 9.2.12
  { name: 'earthHeat', median: 250, spread: 0.5, scale: 'log' }, // kJ/K, 0.1 m of earth round the drum (trade facts 9.2.12)
  { name: 'earthToAir', median: 0.012, spread: 0.4, scale: 'log' }, // kW/K
  { name: 'probePlace', median: 0.56, spread: 1.0, scale: 'share' }, // of the wall probe, 0 at the mouth
  { name: 'probeGas', median: 0.06, spread: 0.9, scale: 'share' }, // how much of the gas the wall probe sees
  { name: 'charge', median: 1, spread: 0.08, scale: 'log' }, // true over recorded mass
  { name: 'moisture', median: 0, spread: 1, scale: 'linear' }, // true minus recorded, in units of its error
  { name: 'piece', median: 1, spread: 0.3, scale: 'log' }, // true over recorded thickness
  { name: 'kinetics', median: 0, spread: 10, scale: 'linear' }, // K by which breakdown comes early
  { name: 'breakdownHeat', median: 60, spread: 90, scale: 'linear' }, // kJ per kg broken down, given off (trade facts 9.2.3)
  { name: 'acidYield', median: 1, spread: 0.25, scale: 'log' },
  { name: 'tarYield', median: 1, spread: 0.25, scale: 'log' },
  { name: 'tarBoils', median: 239, spread: 20, scale: 'linear' }, // °C at which the gas carries its own mass of tar
  { name: 'mist', median: 0.06, spread: 0.8, scale: 'share' }, // tar that passes cool wood as mist
  { name: 'acidVolatility', median: 0.85, spread: 0.35, scale: 'log' }, // of the acids over water in thin solution; acetic acid alone 0.7 (from memory)
  { name: 'chimneyLoss', median: 0.1, spread: 0.6, scale: 'share' }, // of the smoke's heat before the probe
  { name: 'draughtDrift', median: 0.14, spread: 0.23, scale: 'linear' }, // how the draught grows with warm smoke
  { name: 'draughtEarly', median: 1, spread: 0.2, scale: 'log' }, // draught of the first two hours over the mean
  { name: 'draughtLate', median: 1, spread: 0.2, scale: 'log' }, // draught after eight hours over the mean
  { name: 'coreSlow', median: 1, spread: 0.4, scale: 'log' }, // conductance to the core over the handbook's
] as const satisfies readonly Unknown[]

export type UnknownName = (typeof unknowns)[number]['name']
export const unknownCount = unknowns.length

/** Physical values of one member: the unknowns in order, then what follows from them and the charge. */
export const valuesLength = unknownCount + 4
export const dryKgAt = unknowns.length
export const waterKgAt = unknownCount + 1
export const coreConductanceAt = unknownCount + 2
export const coreShareAt = unknownCount + 3

export const at = Object.fromEntries(unknowns.map((u, i) => [u.name, i])) as Record<UnknownName, number>

function physical(u: Unknown, z: number): number {
  if (u.scale === 'log') return u.median * Math.exp(u.spread * z)
  if (u.scale === 'linear') return u.median + u.spread * z
  const logit = Math.log(u.median / (1 - u.median)) + u.spread * z
  return 1 / (1 + Math.exp(-logit))
}

const woodConductivity = 0.15e-3 // kW/(m K), trade facts 9.2.7 and 10.7: denser wood than pine, across the grain
const woodDensity = 600 // kg/m3, trade facts 10.7

/** Fills one member's physical values from its latents. Missing records widen: mass 57 kg dry +-25 %, moisture 27 +-9 %, pieces 65 mm +-30 %. */
export function toPhysical(latents: Float64Array, from: number, charge: Charge, values: Float64Array, to: number): void {
  for (const [i, u] of unknowns.entries()) values[to + i] = physical(u, latents[from + i] as number)
  const zMoisture = latents[from + at.moisture] as number
  const wet = charge.moisturePct === undefined ? 27 + 9 * zMoisture : charge.moisturePct + (1.5 + 0.08 * charge.moisturePct) * zMoisture
  const share = Math.min(0.6, Math.max(0.03, wet / 100))
  const mass =
    charge.massKg === undefined
      ? (57 / (1 - share)) * Math.exp(0.25 * (latents[from + at.charge] as number))
      : charge.massKg * (values[to + at.charge] as number)
  const dry = mass * (1 - share)
  values[to + dryKgAt] = dry
  values[to + waterKgAt] = mass * share
  const thick = ((charge.pieceMm ?? 65) / 1000) * (charge.pieceMm === undefined ? 1 : 1) * (values[to + at.piece] as number)
  // surface of round pieces 4 V / d, way from the outer half of the mass to the inner d / 5
  const area = (4 * dry) / woodDensity / thick
  values[to + coreConductanceAt] = ((woodConductivity * area) / (thick / 5)) * (values[to + at.coreSlow] as number)
  values[to + coreShareAt] = 0.5
}
