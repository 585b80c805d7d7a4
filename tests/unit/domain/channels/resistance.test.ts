import { describe, expect, it } from 'vitest'
import { ntcC, ntcOhm, pt100C, pt100Ohm } from '../../../../server/domain/channels/resistance.ts'

describe('Pt100, IEC 60751 (instrument facts 2.7)', () => {
  it.each([
    [-200, 18.5201],
    [-100, 60.2558],
    [-50, 80.3063],
    [-10, 96.0859],
    [0, 100],
    [10, 103.9025],
    [25, 109.7347],
    [50, 119.3971],
    [75, 128.9874],
    [100, 138.5055],
    [150, 157.3251],
    [200, 175.856],
    [250, 194.0981],
    [300, 212.0515],
    [400, 247.092],
    [500, 280.9775],
    [600, 313.708],
    [850, 390.4811],
  ])('%d °C is %d ohm, both ways', (tC, ohm) => {
    expect(pt100Ohm(tC)).toBeCloseTo(ohm, 4)
    expect(pt100C(pt100Ohm(tC))).toBeCloseTo(tC, 8)
  })

  it('has no temperature outside -200 to 850 °C', () => {
    expect(pt100C(18)).toBeNull()
    expect(pt100C(391)).toBeNull()
  })
})

describe('NTC, two-parameter formula (instrument facts 2.6)', () => {
  it.each([
    [3950, 0, 33621],
    [3950, 50, 3588],
    [3950, 85, 1087],
    [3950, 100, 698],
    [3435, 0, 28704],
    [3435, 50, 4101],
    [3435, 85, 1451],
    [3435, 100, 987],
  ])('B %d at %d °C is %d ohm, both ways', (beta, tC, ohm) => {
    expect(Math.round(ntcOhm(tC, 10_000, beta))).toBe(ohm)
    expect(ntcC(ntcOhm(tC, 10_000, beta), 10_000, beta)).toBeCloseTo(tC, 9)
  })

  // A real part's table (Humirel, 10 k, 3730) against the formula: about a kelvin at the ends, as the handbook computed.
  it.each([
    [144790, -27.48],
    [82923, -18.12],
    [49204, -8.68],
    [30029, 0.91],
    [23773, 5.7],
    [18959, 10.5],
    [12280, 20.18],
    [10000, 25],
  ])('%d ohm is %d °C', (ohm, tC) => {
    expect(ntcC(ohm, 10_000, 3730)).toBeCloseTo(tC, 1)
  })

  it('has no temperature for what no resistor can have', () => {
    expect(ntcC(0, 10_000, 3950)).toBeNull()
    expect(ntcC(-5, 10_000, 3950)).toBeNull()
  })
})
