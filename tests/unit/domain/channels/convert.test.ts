import { describe, expect, it } from 'vitest'
import { assumedColdJunctionC, convert, stepOfValue } from '../../../../server/domain/channels/convert.ts'
import { plainKind, type ChannelKind } from '../../../../server/domain/channels/kind.ts'
import { straightLineMvPerK, straightLineReport, straightLineToC } from '../../../../server/domain/channels/straight-line.ts'
import { thermocoupleMv } from '../../../../server/domain/channels/thermocouple.ts'
import type { ThermocoupleLetter } from '../../../../server/domain/channels/thermocouple.ts'

const max31855: ChannelKind = { unit: 'Cel', sensor: 'K', converter: 'max31855', linearised: false }
const beside = (coldJunctionC: number | null, recent: number | null = null) => ({ coldJunctionC, recent })

describe('straight-line chips', () => {
  // Instrument facts 2.1, test vectors: exact inverse of the direct function.
  it.each([
    [20.25, 35, 20.005],
    [25.0, 25, 25.0],
    [80.0, 25, 80.091],
    [100.0, 25, 99.993],
    [149.5, 30, 149.936],
    [266.75, 30, 270.108],
    [296.75, 40, 300.02],
    [398.25, 35, 400.083],
    [449.5, 40, 449.965],
    [604.25, 45, 599.889],
    [706.75, 45, 700.061],
    [807.25, 50, 800.096],
    [905.25, 50, 899.962],
  ])('MAX31855 K: reported %d at a board of %d °C is %d °C', (reported, board, expected) => {
    const converted = convert(max31855, reported, beside(board))
    expect(converted).toMatchObject({ is: 'value', quality: 'good', assumed: false })
    expect(converted.is === 'value' ? converted.value : NaN).toBeCloseTo(expected, 3)
  })

  // Instrument facts 2.1, non-linearity table: reported minus true, rounded to 0.1.
  const trueC = [20, 50, 80, 100, 150, 200, 250, 300, 350, 400, 500, 600, 700, 800, 900, 1000]
  it.each<[ThermocoupleLetter, number, number[]]>([
    ['K', 25, [0.1, -0.2, -0.1, 0.0, -0.5, -2.1, -3.2, -3.5, -3.0, -2.0, 0.9, 4.2, 6.5, 6.9, 5.1, 0.8]],
    ['K', 60, [0.3, 0.0, 0.1, 0.2, -0.3, -1.9, -3.0, -3.2, -2.7, -1.8, 1.1, 4.4, 6.7, 7.1, 5.3, 1.0]],
    ['J', 25, [0.5, -2.4, -4.8, -6.1, -8.8, -11.0, -13.1, -15.3, -17.6, -20.0, -24.4, -25.8, -21.8, -12.0, -1.9, 3.0]],
    ['N', 25, [1.3, -6.2, -12.8, -16.7, -24.5, -30.1, -33.6, -35.5, -36.0, -35.3, -31.2, -24.6, -16.7, -8.3, -0.3, 6.8]],
    ['T', 25, [1.1, -5.0, -9.7, -12.0, -15.5, -16.0, -13.8, -9.2, -2.5, 6.0]],
    ['E', 25, [1.0, -4.7, -9.3, -11.8, -16.4, -18.8, -19.6, -19.1, -17.7, -15.6, -10.0, -4.1, 0.9, 4.4, 6.1, 5.4]],
  ])('type %s, board %d °C: the straight line is off as tabled, and is bent back', (letter, board, off) => {
    const mvPerK = straightLineMvPerK('max31855', letter) ?? NaN
    for (const [i, difference] of off.entries()) {
      const t = trueC[i] ?? NaN
      const reported = straightLineReport(letter, mvPerK, t, board)
      expect(Math.abs(reported - t - difference), `${t} °C`).toBeLessThanOrEqual(0.0501)
      expect(straightLineToC(letter, mvPerK, reported, board), `${t} °C`).toBeCloseTo(t, 6)
    }
  })

  // Instrument facts 2.2, cold junction 25.
  it.each([
    [100, 0.5],
    [200, -0.9],
    [300, -1.6],
    [400, 0.5],
    [500, 4.1],
    [600, 8.1],
    [700, 11.1],
    [800, 12.2],
    [1000, 7.3],
  ])('MAX6675 at %d °C is off by %d K', (t, off) => {
    expect(Math.abs(straightLineReport('K', 0.041, t, 25) - t - off)).toBeLessThanOrEqual(0.0501)
  })

  it('chooses the piece by the summed voltage: no jump where the junctions are near each other (a bug of a published sketch, instrument facts 2.1, point 4)', () => {
    let before = NaN
    for (let reported = 20; reported <= 30; reported += 0.25) {
      const converted = convert(max31855, reported, beside(25))
      const value = converted.is === 'value' ? converted.value : NaN
      if (!Number.isNaN(before)) expect(value - before).toBeCloseTo(0.25, 1)
      before = value
    }
  })

  it('leaves what was linearised on the node as it is', () => {
    expect(convert({ ...max31855, converter: 'max31856', linearised: true }, 612.5, beside(null))).toEqual({
      is: 'value',
      value: 612.5,
      quality: 'good',
      assumed: false,
    })
  })
})

describe('a board that is not told', () => {
  it('is taken as 30 °C, which for type K behind a straight-line chip is worth less than the chip itself errs', () => {
    const without = convert(max31855, 398.25, beside(null))
    expect(without).toEqual({ ...convert(max31855, 398.25, beside(assumedColdJunctionC)), assumed: true })
    expect(without).toMatchObject({ quality: 'good' })
  })

  it('puts a reading in doubt where it matters: another letter, or a raw voltage', () => {
    expect(convert({ ...max31855, sensor: 'N' }, 300, beside(null))).toMatchObject({ is: 'value', quality: 'suspect', assumed: true })
    expect(convert({ ...max31855, unit: 'V', converter: 'ads1220' }, 0.012, beside(null))).toMatchObject({ quality: 'suspect' })
  })
})

describe('raw voltage', () => {
  it.each(['K', 'J', 'N', 'T', 'E', 'S', 'R', 'B'] as const)('type %s: voltage and board give the temperature back', (letter) => {
    const kind: ChannelKind = { unit: 'V', sensor: letter, converter: 'ads1220', linearised: true }
    const sent = (thermocoupleMv(letter, 350) - thermocoupleMv(letter, 28)) / 1000
    const converted = convert(kind, sent, beside(28))
    expect(converted.is === 'value' ? converted.value : NaN).toBeCloseTo(350, 5)
  })
})

describe('numbers that chips give when they have nothing to say (instrument facts 2 and 4)', () => {
  const ds18b20: ChannelKind = { unit: 'Cel', sensor: 'ds18b20', converter: 'none', linearised: true }
  const max6675: ChannelKind = { unit: 'Cel', sensor: 'K', converter: 'max6675', linearised: false }
  const scale: ChannelKind = { unit: 'count', sensor: 'hx711', converter: 'none', linearised: true }
  const ads1115: ChannelKind = { unit: 'V', sensor: 'K', converter: 'ads1115', linearised: true }

  it.each([
    ['DS18B20 at its power-on value', ds18b20, 85, null, null, 'not-converted'],
    ['DS18B20 gone', ds18b20, -127, null, null, 'bus'],
    ['MAX6675 at full scale', max6675, 1023.75, null, 30, 'saturated'],
    ['MAX6675 at 0: a reversed pair', max6675, 0, null, 30, 'range'],
    ['MAX31855 with its data line stuck low', max31855, 0, null, 0, 'bus'],
    ['HX711 at its upper end', scale, 8_388_607, null, null, 'saturated'],
    ['HX711 at its lower end', scale, -8_388_608, null, null, 'saturated'],
    ['ADS1115 at full scale', ads1115, 0.256, null, 30, 'open'],
  ] as const)('%s', (_, kind, sent, recent, board, fault) => {
    expect(convert(kind, sent, beside(board, recent))).toEqual({ is: 'fault', fault })
  })

  it('believes them where the last reading was near', () => {
    expect(convert(ds18b20, 85, beside(null, 84.5))).toMatchObject({ is: 'value', value: 85 })
    expect(convert(max31855, 0, beside(0, 0.5))).toMatchObject({ is: 'value' })
    expect(convert(max31855, 0, beside(4))).toMatchObject({ is: 'value' })
  })

  it('does not let one sentinel vouch for the next', () => {
    expect(convert(ds18b20, 85, beside(null, 85))).toEqual({ is: 'fault', fault: 'not-converted' })
  })
})

describe('range of the probe', () => {
  const ds18b20: ChannelKind = { unit: 'Cel', sensor: 'ds18b20', converter: 'none', linearised: true }
  it('doubts what is a little outside, holds what is far outside to the range, refuses what no register can hold', () => {
    expect(convert(ds18b20, 125, beside(null))).toMatchObject({ is: 'value', quality: 'good' })
    expect(convert(ds18b20, 130, beside(null))).toMatchObject({ is: 'value', value: 130, quality: 'suspect' })
    // A fifth of the span of 180 K.
    expect(convert(ds18b20, 160.9375, beside(null))).toMatchObject({ is: 'value', quality: 'suspect' })
    expect(convert(ds18b20, 161.0625, beside(null))).toEqual({ is: 'beyond', value: 125 })
    expect(convert(ds18b20, 300, beside(null))).toEqual({ is: 'beyond', value: 125 })
    expect(convert(max31855, 1700, beside(25))).toEqual({ is: 'beyond', value: 1372 })
    expect(convert(ds18b20, 5000, beside(null))).toEqual({ is: 'out-of-range' })
  })

  // Absolute zero, -273.15 °C, is the SI's; boards and DS18B20 end at -55 °C (instrument facts 2.1, 2.5). -50 °C: own judgement.
  it.each([
    ['below absolute zero', plainKind('Cel'), -400],
    ['0 K', plainKind('K'), 0],
    ['a register of MAX31855 at its lower end', max31855, -250],
    ['a reversed pair beside a fire', max31855, -900],
    ['a reversed pair of raw voltage', { ...max31855, unit: 'V', converter: 'ads1220' } as const, -0.02],
    ['the lower end of a DS18B20', ds18b20, -55],
    ['just under the coldest air', plainKind('Cel'), -50.01],
  ])('refuses what can not be in the open air: %s', (_, kind, sent) => {
    expect(convert(kind, sent, beside(25))).toEqual({ is: 'out-of-range' })
  })

  it('takes a hard frost', () => {
    for (const kind of [plainKind('Cel'), ds18b20, max31855])
      expect(convert(kind, -40, beside(-38))).toMatchObject({ is: 'value', quality: 'good' })
    expect(convert(plainKind('Cel'), -50, beside(null))).toMatchObject({ is: 'value' })
  })

  it('tells other quantities in the unit of the kiln: ppm, kilogram, °C', () => {
    const of = (unit: string, sensor: ChannelKind['sensor']): ChannelKind => ({ unit, sensor, converter: 'none', linearised: true })
    expect(convert(of('/', 'co'), 0.00005, beside(null))).toMatchObject({ is: 'value', value: 50 }) // RFC 8798: 50 ppm
    expect(convert(of('kg', 'hx711'), 1.25, beside(null))).toMatchObject({ value: 1.25 })
    expect(convert(of('K', 'other'), 373.15, beside(null))).toMatchObject({ value: 100 })
    expect(convert(of('Ohm', 'pt100'), 138.5055, beside(null))).toMatchObject({ is: 'value' })
  })

  it('tells the converter step in that unit too', () => {
    expect(stepOfValue({ unit: 'V', sensor: 'K', converter: 'ads1115', linearised: true }, 7.8125e-6)).toBeCloseTo(0.19, 2) // instrument facts 2.4
    expect(stepOfValue({ unit: '/', sensor: 'co', converter: 'none', linearised: true }, 1e-6)).toBeCloseTo(1, 9)
  })
})
