import { describe, expect, it } from 'vitest'
import {
  avoidableShare,
  condensedFraction,
  lostShare,
  pressureKPa,
  saturationKPa,
  waterLeft,
} from '../../../../server/domain/condenser/loss.ts'

describe('saturation pressure (IAPWS-IF97)', () => {
  // Release verification values and the table of instrument facts 8.1.
  it.each([
    [26.85, 3.53658941],
    [226.85, 2638.89776],
    [326.85, 12344.3146],
  ])('verification value at %d °C', (celsius, kPa) => expect(saturationKPa(celsius) / kPa).toBeCloseTo(1, 8))
  it.each([
    [0.01, 0.61166],
    [10, 1.22818],
    [25, 3.16975],
    [40, 7.38443],
    [60, 19.9458],
    [80, 47.41472],
    [100, 101.41798],
    [150, 476.10138],
  ])('table at %d °C', (celsius, kPa) => expect(saturationKPa(celsius) / kPa).toBeCloseTo(1, 5))
  it('boils at 99.974 °C at sea level', () => expect(saturationKPa(99.974)).toBeCloseTo(101.325, 2))
})

describe('condensed fraction', () => {
  // Instrument facts 8.3, both columns.
  it.each([
    [20, 97.64, 98.99],
    [25, 96.77, 98.62],
    [30, 95.63, 98.13],
    [40, 92.14, 96.63],
    [50, 86.12, 94.05],
    [60, 75.49, 89.5],
    [70, 55.51, 80.93],
    [80, 12.05, 62.31],
    [85, 0, 42.93],
  ])('at %d °C', (celsius, half, seventy) => {
    expect(condensedFraction(0.5, celsius) * 100).toBeCloseTo(half, 1)
    expect(condensedFraction(0.7, celsius) * 100).toBeCloseTo(seventy, 1)
  })
})

describe('water left in the gas', () => {
  // Trade facts 8, table: kg water per kg dry gas of molar mass 30, and the share caught at 0.25 and 1.0 kg gas per kg wood.
  it.each([
    [25, 0.019, 0.99, 0.96],
    [35, 0.035, 0.98, 0.92],
    [45, 0.063, 0.97, 0.86],
    [55, 0.111, 0.94, 0.75],
    [65, 0.197, 0.89, 0.56],
    [75, 0.37, 0.79, 0.18],
    [80, 0.528, 0.71, 0],
    [85, 0.799, 0.56, 0],
  ])('at %d °C', (celsius, left, tight, leaky) => {
    expect(waterLeft(celsius, 101.325)).toBeCloseTo(left, 2)
    const lost = lostShare(celsius)
    expect(1 - lost.low).toBeCloseTo(tight, 2)
    expect(1 - lost.high).toBeCloseTo(leaky, 1)
  })
  it('boils over at the boil', () => expect(waterLeft(101, 101.325)).toBe(Infinity))
})

describe('what dry cloths cost', () => {
  it('is nothing where the outlet is what wet ones reach, however warm: a small condenser does not cry all day', () => {
    expect(avoidableShare(66, 66)).toEqual({ low: 0, high: 0 })
    expect(avoidableShare(60, 66)).toEqual({ low: 0, high: 0 })
  })
  it('grows with the warmth and with the height above sea', () => {
    expect(avoidableShare(55, 35).high).toBeGreaterThan(avoidableShare(45, 35).high)
    expect(avoidableShare(55, 35, pressureKPa(2000)).high).toBeGreaterThan(avoidableShare(55, 35).high)
  })
  it('takes the pressure of the standard atmosphere', () => {
    // International standard atmosphere: 89.875 kPa at 1000 m, 79.495 at 2000 m (from memory).
    expect(pressureKPa(1000)).toBeCloseTo(89.87, 1)
    expect(pressureKPa(2000)).toBeCloseTo(79.5, 1)
  })
})
