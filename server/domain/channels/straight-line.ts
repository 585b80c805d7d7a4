import { thermocoupleC, thermocoupleMv } from './thermocouple.ts'
import type { ThermocoupleLetter } from './tables/its90.ts'
import type { Converter } from './kind.ts'

/**
 * Straight lines that converter chips assume, mV/K. MAX31855: maker's data sheet for K, E(1000)/1000 of the type for the others
 * (T: E(400)/400), instrument facts 2.1. MAX6675: 0.041, type K only, instrument facts 2.2.
 */
const max31855MvPerK: Partial<Record<ThermocoupleLetter, number>> = {
  K: 0.041276,
  J: 0.057953,
  N: 0.036256,
  T: 0.05218,
  E: 0.076373,
  S: 0.009587,
  R: 0.010506,
}
const max6675MvPerK = 0.041

/** Null where the chip draws no straight line for that letter. */
export function straightLineMvPerK(converter: Converter, letter: ThermocoupleLetter): number | null {
  if (converter === 'max6675') return letter === 'K' ? max6675MvPerK : null
  if (converter === 'max31855') return max31855MvPerK[letter] ?? null
  return null
}

/**
 * Temperature, °C, behind what a straight-line chip reported (instrument facts 2.1: take the line back to a voltage, add the
 * cold junction's voltage, then invert the sum). Null outside the range of the letter.
 */
export function straightLineToC(letter: ThermocoupleLetter, mvPerK: number, reportedC: number, coldJunctionC: number): number | null {
  return thermocoupleC(letter, (reportedC - coldJunctionC) * mvPerK + thermocoupleMv(letter, coldJunctionC))
}

/** What an ideal straight-line chip reports, °C: the way back, for tests and for saying how far off an uncorrected reading is. */
export function straightLineReport(letter: ThermocoupleLetter, mvPerK: number, trueC: number, coldJunctionC: number): number {
  return (thermocoupleMv(letter, trueC) - thermocoupleMv(letter, coldJunctionC)) / mvPerK + coldJunctionC
}
