import { describe, expect, it } from 'vitest'
import { thermocoupleLetters } from '../../../../server/domain/channels/tables/its90.ts'
import { thermocoupleC, thermocoupleMv, thermocoupleRange, thermocoupleSlope } from '../../../../server/domain/channels/thermocouple.ts'
import { its90Checks } from './tables/its90-checks.ts'

describe.each([...thermocoupleLetters])('type %s against the NIST ITS-90 database, SRD 60', (letter) => {
  const checks = its90Checks[letter] ?? []
  const { fromC, toC } = thermocoupleRange(letter)

  it('gives the printed millivolts after rounding to a microvolt, and the polynomial to six decimals', () => {
    expect(checks.length).toBeGreaterThan(5)
    for (const [tC, tableMv, polynomialMv] of checks) {
      expect(Math.round(thermocoupleMv(letter, tC) * 1000), `${tC} °C`).toBe(Math.round(tableMv * 1000))
      expect(thermocoupleMv(letter, tC), `${tC} °C`).toBeCloseTo(polynomialMv, 6)
    }
  })

  it('finds the temperature of every check value again within 1e-6 K', () => {
    for (const [tC] of checks) if (tC >= fromC) expect(thermocoupleC(letter, thermocoupleMv(letter, tC)), `${tC} °C`).toBeCloseTo(tC, 6)
  })

  it('finds the temperature of the printed millivolts within their last half digit', () => {
    for (const [tC, tableMv] of checks) {
      if (tC < fromC + 1) continue
      const halfDigitK = 0.000501 / thermocoupleSlope(letter, tC)
      expect(Math.abs((thermocoupleC(letter, tableMv) ?? NaN) - tC), `${tC} °C`).toBeLessThanOrEqual(halfDigitK * 1.01)
    }
  })

  it('inverts exactly, rises all the way and has no step, at every degree of its range', () => {
    let before = -Infinity
    for (let tC = Math.ceil(fromC); tC <= Math.floor(toC); tC += 1) {
      const mv = thermocoupleMv(letter, tC)
      const back = thermocoupleC(letter, mv)
      expect(mv, `${tC} °C`).toBeGreaterThan(before)
      // Near its ends a function may rise by less than a double can tell; there a wider margin holds.
      const margin = thermocoupleSlope(letter, tC) > 1e-4 ? 1e-6 : 1e-3
      expect(Math.abs((back ?? NaN) - tC), `${tC} °C`).toBeLessThan(margin)
      before = mv
    }
  })

  it('has no temperature for a voltage outside its range', () => {
    expect(thermocoupleC(letter, thermocoupleMv(letter, toC) + 0.01)).toBeNull()
    expect(thermocoupleC(letter, thermocoupleMv(letter, fromC) - 0.01)).toBeNull()
    expect(thermocoupleC(letter, NaN)).toBeNull()
  })
})

describe('joints', () => {
  // Instrument facts 1.1: direct functions meet to better than 2e-7 mV.
  it.each([
    ['K', 0],
    ['J', 760],
    ['N', 0],
    ['T', 0],
    ['E', 0],
    ['S', 1064.18],
    ['S', 1664.5],
    ['R', 1064.18],
    ['R', 1664.5],
    ['B', 630.615],
  ] as const)('type %s at %d °C', (letter, tC) => {
    const below = thermocoupleMv(letter, tC)
    const above = thermocoupleMv(letter, tC + 1e-9) - 1e-9 * thermocoupleSlope(letter, tC)
    expect(Math.abs(above - below)).toBeLessThan(2e-7)
  })
})
