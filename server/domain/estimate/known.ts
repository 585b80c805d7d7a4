import type { Known, Lesson, Prior } from '../../contract/learnt.ts'
import { unknownCount, unknowns, type UnknownName } from '../kiln/parameters.ts'
import { nextNormal } from './random.ts'
import type { EnsembleState } from './shape.ts'
import { memberCount } from './size.ts'

// What the ensemble gives away of its kiln at the seal, and where it begins in the next firing of the same one: from a mixture of what was
// learnt and the wide prior, so that a probe that was moved or a new drum is found out and not fatal.

/** Of the kiln, its cover, its probes and how it is fired; what is not named belongs to the charge of the day. */
const ofTheKiln: readonly UnknownName[] = [
  'draught',
  'inletShare',
  'fireWater',
  'gasToWood',
  'gasToWall',
  'woodToWall',
  'wallToEarth',
  'earthHeat',
  'earthToAir',
  'probePlace',
  'probeGas',
  'tarBoils',
  'mist',
  'acidVolatility',
  'chimneyLoss',
  'draughtDrift',
  'draughtEarly',
  'draughtLate',
  'coreSlow',
]

/** Share of the members, and of the proposals drawn afresh, that come from the wide prior all the same. */
export const wideShare = 0.25
/** A firing shorter than three hours, in beats, has told too little. */
const leastBeats = 90

/** Means of the unknowns, then their spreads; null where nothing was learnt. */
export function knownOf(prior: Prior | undefined): Float64Array | null {
  const learnt = prior?.unknowns
  if (learnt === undefined) return null
  const known = new Float64Array(2 * unknownCount)
  for (const [i, { name }] of unknowns.entries()) {
    known[i] = learnt[name]?.mean ?? 0
    known[unknownCount + i] = learnt[name]?.sd ?? 1
  }
  return known
}

/** One unknown drawn from what is known, or from the wide prior. */
export function drawOne(known: Float64Array | null, isWide: boolean, i: number, word: Uint32Array): number {
  const z = nextNormal(word)
  return known === null || isWide ? z : (known[i] as number) + (known[unknownCount + i] as number) * z
}

/** Logarithm of the prior density, but for a constant. */
export function priorOf(latents: Float64Array, from: number, known: Float64Array | null): number {
  let wide = 0
  for (let i = 0; i < unknownCount; i++) wide -= 0.5 * (latents[from + i] as number) * (latents[from + i] as number)
  if (known === null) return wide
  let narrow = 0
  for (let i = 0; i < unknownCount; i++) {
    const sd = known[unknownCount + i] as number
    const off = ((latents[from + i] as number) - (known[i] as number)) / sd
    narrow -= 0.5 * off * off + Math.log(sd)
  }
  const [a, b] = [Math.log(1 - wideShare) + narrow, Math.log(wideShare) + wide]
  return Math.max(a, b) + Math.log(1 + Math.exp(-Math.abs(a - b)))
}

/** What this firing taught; null where it was too short or its wall was not heard for the most of it. */
export function lessonOf(s: EnsembleState): Lesson | null {
  const { length, wall } = s.history
  let heard = 0
  for (let k = 0; k < length; k++) if (!Number.isNaN(wall[k] as number)) heard++
  if (length < leastBeats || heard < length / 2) return null
  const learnt: Record<string, Known> = {}
  for (const [i, { name }] of unknowns.entries()) {
    if (!ofTheKiln.includes(name)) continue
    let mean = 0
    let square = 0
    for (let m = 0; m < memberCount; m++) {
      const z = s.members.latents[m * unknownCount + i] as number
      mean += (s.weights[m] as number) * z
      square += (s.weights[m] as number) * z * z
    }
    learnt[name] = { mean: rounded(mean), sd: rounded(Math.sqrt(Math.max(1e-4, square - mean * mean))) }
  }
  return { part: 'burn', unknowns: learnt }
}

const rounded = (value: number): number => Math.round(value * 1000) / 1000
