import { describe, expect, it } from 'vitest'
import { calibrate, onePoint, twoPoints } from '../../../../server/domain/channels/calibration.ts'
import { valueError } from '../../../../server/domain/channels/accuracy.ts'

describe('field calibration (instrument facts 3.3)', () => {
  it('gives the worked example: ice read as 1.2, water boiling at 1000 m read as 98.1', () => {
    const calibration = twoPoints({ readC: 1.2, trueC: 0 }, { readC: 98.1, trueC: 96.65 })
    if (typeof calibration === 'string') throw new Error(calibration)
    expect(calibration.gain).toBeCloseTo(0.99742, 6)
    expect(calibration.offset).toBeCloseTo(-1.196904, 6)
    expect(calibrate(calibration, 25)).toBeCloseTo(23.739, 3)
    expect(calibrate(calibration, 50)).toBeCloseTo(48.674, 3)
    expect(calibrate(calibration, 300)).toBeCloseTo(298.029, 3)
  })

  it('refuses what is more likely a wiring fault', () => {
    expect(twoPoints({ readC: 0, trueC: 0 }, { readC: 40, trueC: 40 })).toBe('points-too-near')
    expect(twoPoints({ readC: 0, trueC: 0 }, { readC: 100, trueC: 96.9 })).toBe('gain-too-far')
    expect(twoPoints({ readC: 9, trueC: 0 }, { readC: 109, trueC: 100 })).toBe('offset-too-far')
    expect(onePoint({ readC: 8.5, trueC: 0 })).toBe('offset-too-far')
  })

  it('sets only the offset from one point', () => {
    expect(onePoint({ readC: 1.25, trueC: 0 })).toEqual({ gain: 1, offset: -1.25 })
    expect(calibrate(undefined, 31.5)).toBe(31.5)
  })
})

describe('error beside the number (instrument facts 2.10: MAX31855, class 2 type K)', () => {
  const usual = { sensor: 'K', converter: 'max31855', linearised: false }
  it.each([
    [40, 3.8],
    [350, 3.9],
    [800, 7.5],
  ])('%d °C is good to %d K', (valueC, expected) => {
    expect(Math.abs(valueError(usual, valueC, false, 0) - expected)).toBeLessThan(0.06)
  })

  it('is half a kelvin for a DS18B20 at the outlet, and less after a calibration, but not where water says nothing', () => {
    expect(valueError({ sensor: 'ds18b20', converter: 'none', linearised: true }, 40, false, 0)).toBeCloseTo(0.51, 2)
    expect(valueError(usual, 100, true, 0)).toBeLessThan(0.6)
    expect(valueError(usual, 800, true, 0)).toBe(valueError(usual, 800, false, 0))
  })

  // Tolerances of new wire, instrument facts 1.4; converter and board taken away by a perfect chip.
  it.each([
    ['K', 800, 6],
    ['K', 400, 3],
    ['K', 300, 2.5],
    ['T', 40, 1],
    ['pt100', 100, 0.8],
    ['pt100', 400, 2.3],
  ])('%s at %d °C: class 2 or B is %d K and the whole error no less', (sensor, valueC, toleranceK) => {
    const error = valueError({ sensor, converter: 'max31856', linearised: true }, valueC, false, 0)
    expect(error).toBeGreaterThanOrEqual(toleranceK)
    expect(error).toBeLessThan(toleranceK + 1)
  })

  it('knows the scatter of the reading, and takes the usual probe where none is told', () => {
    expect(valueError(usual, 40, false, 3)).toBeGreaterThan(valueError(usual, 40, false, 0))
    expect(valueError(null, 40, false, 0)).toBe(valueError(usual, 40, false, 0))
  })
})
