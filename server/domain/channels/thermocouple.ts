import { kExponential, referenceFunctions } from './tables/its90.ts'
import type { ReferencePiece, ThermocoupleLetter } from './tables/its90.ts'

export type { ThermocoupleLetter } from './tables/its90.ts'

/**
 * Voltage of a thermocouple, mV, with its reference junction at 0 °C (ITS-90 reference function).
 * Outside the function's range the nearest piece is carried on; ask `thermocoupleRange` where that matters.
 */
export function thermocoupleMv(letter: ThermocoupleLetter, tC: number): number {
  return valueAt(letter, pieceAt(letter, tC), tC)
}

/** Where the reference function stands, °C; the lower bound for type B is where it begins to rise (its voltage falls from 0 to about 21 °C). */
export function thermocoupleRange(letter: ThermocoupleLetter): { fromC: number; toC: number } {
  const pieces = referenceFunctions[letter]
  return { fromC: letter === 'B' ? lowestRisingB : (pieces[0]?.fromC ?? 0), toC: pieces.at(-1)?.toC ?? 0 }
}

/** Turning point of type B's reference function, °C (found by setting its derivative to zero). */
const lowestRisingB = 21.020262

/**
 * Temperature of a thermocouple, °C, from its voltage, mV, reference junction at 0 °C: the exact inverse of the reference function
 * within 1e-6 K, so that there is neither the step nor the error of the published inverse polynomials.
 * The piece is chosen by this summed voltage alone (instrument facts 2.1, point 4). Null outside the function's range.
 */
export function thermocoupleC(letter: ThermocoupleLetter, mv: number): number | null {
  const { fromC, toC } = thermocoupleRange(letter)
  let low = fromC
  let high = toC
  // Half of the last printed digit of the tables, so that the table's own end values are inside.
  const slackMv = 0.0005
  const lowMv = thermocoupleMv(letter, low)
  const highMv = thermocoupleMv(letter, high)
  if (!(mv >= lowMv - slackMv && mv <= highMv + slackMv)) return null
  if (mv <= lowMv) return low
  if (mv >= highMv) return high
  let t = low + ((high - low) * (mv - lowMv)) / (highMv - lowMv)
  for (let round = 0; round < mostRounds; round++) {
    const piece = pieceAt(letter, t)
    const missing = mv - valueAt(letter, piece, t)
    if (missing > 0) low = t
    else high = t
    // Newton's step where it stays inside the bracket, else halving: the function rises all the way, so this cannot fail.
    let next = t + missing / slopeAt(letter, piece, t)
    if (!(next > low && next < high)) next = (low + high) / 2
    if (Math.abs(next - t) < finestK) return next
    t = next
  }
  return t
}

const mostRounds = 80
const finestK = 1e-8

/** Sensitivity, mV/K. */
export function thermocoupleSlope(letter: ThermocoupleLetter, tC: number): number {
  return slopeAt(letter, pieceAt(letter, tC), tC)
}

function pieceAt(letter: ThermocoupleLetter, tC: number): ReferencePiece {
  const pieces = referenceFunctions[letter]
  let last = pieces[0]
  for (const piece of pieces) {
    last = piece
    if (tC <= piece.toC) break
  }
  if (last === undefined) throw new RangeError(`no reference function for type ${letter}`)
  return last
}

function valueAt(letter: ThermocoupleLetter, { coefficients }: ReferencePiece, tC: number): number {
  let sum = 0
  for (let i = coefficients.length - 1; i >= 0; i--) sum = sum * tC + (coefficients[i] ?? 0)
  if (letter !== 'K' || tC <= 0) return sum
  const away = tC - kExponential.centreC
  return sum + kExponential.amplitudeMv * Math.exp(kExponential.ratePerK2 * away * away)
}

function slopeAt(letter: ThermocoupleLetter, { coefficients }: ReferencePiece, tC: number): number {
  let sum = 0
  for (let i = coefficients.length - 1; i >= 1; i--) sum = sum * tC + i * (coefficients[i] ?? 0)
  if (letter !== 'K' || tC <= 0) return sum
  const { amplitudeMv, ratePerK2, centreC } = kExponential
  const away = tC - centreC
  return sum + amplitudeMv * Math.exp(ratePerK2 * away * away) * 2 * ratePerK2 * away
}
