import { describe, expect, it } from 'vitest'
import { boilingAtC, boilingC } from '../../../../server/domain/channels/boiling.ts'

describe('boiling point of water', () => {
  // IAPWS-IF97, release verification values (instrument facts 8.1).
  it.each([
    [0.1, 372.755919],
    [1, 453.035632],
    [10, 584.149488],
  ])('%d MPa: %d K', (mPa, kelvin) => {
    expect(boilingC(mPa * 1000) + 273.15).toBeCloseTo(kelvin, 6)
  })

  // Instrument facts 3.2.
  it.each([
    [-300, 100.97],
    [0, 99.97],
    [200, 99.31],
    [400, 98.64],
    [600, 97.98],
    [800, 97.31],
    [1000, 96.65],
    [1200, 95.98],
    [1500, 94.98],
    [1800, 93.98],
    [2000, 93.32],
    [2500, 91.64],
    [3000, 89.97],
    [4000, 86.62],
  ])('at %d m: %d °C', (altitudeM, celsius) => {
    expect(Math.abs(boilingAtC(altitudeM) - celsius)).toBeLessThan(0.0051)
  })

  it.each([
    [98, 99.04],
    [100, 99.61],
    [101.325, 99.97],
    [103, 100.43],
    [104, 100.71],
  ])('in the weather of %d kPa: %d °C', (kPa, celsius) => {
    expect(Math.abs(boilingC(kPa) - celsius)).toBeLessThan(0.0051)
  })
})
