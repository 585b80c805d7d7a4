import { describe, expect, it } from 'vitest'
import { cooledC } from '../../../server/simulator/kiln/pipe.ts'
import { capacityFlow, heatFlow, humidity, saturationKPa } from '../../../server/simulator/kiln/steam.ts'
import { straightLineC, typeKmV } from '../../../server/simulator/node/thermocouple.ts'

describe('steam', () => {
  // IAPWS-IF97 release, equation 30: 300 K 0.00353658941 MPa, 500 K 2.63889776 MPa (instrument facts 8.1)
  it.each([
    [300 - 273.15, 3.53658941],
    [500 - 273.15, 2638.89776],
    [100, 101.41798],
    [60, 19.9458],
  ])('saturates at %d °C as IF97 says', (tC, kPa) => {
    expect(saturationKPa(tC) / kPa).toBeCloseTo(1, 6)
  })

  it('condenses the share of instrument facts 8.3: half steam, outlet at 40 °C, 92.139 %', () => {
    const massRatio = 18 / 30
    const inX = massRatio * 1
    expect(1 - humidity(40, 1) / inX).toBeCloseTo(0.92139, 3)
  })

  // trade facts 8, table: kg of water per kg of dry gas, dry-gas molar mass 30
  it.each([
    [25, 0.019],
    [45, 0.063],
    [65, 0.197],
    [80, 0.528],
  ])('leaves %d °C with %d kg per kg', (tC, x) => {
    expect(humidity(tC, 1)).toBeCloseTo(x, 2)
  })

  it('cools a gas by exactly the heat that leaves through the pipe', () => {
    const gas = { dry: 0.008, vapour: 0.003, acid: 0.0001, tar: 0.0001, air: 0, tempC: 120 }
    const t = cooledC(gas, 0.05, 20)
    const vapour = Math.min(gas.vapour, gas.dry * humidity(t, 1))
    const left = heatFlow({ ...gas, vapour, tempC: t }) + (gas.vapour - vapour) * 4.19 * t
    expect(Math.abs(heatFlow(gas) - left - 0.05 * (t - 20)) / heatFlow(gas)).toBeLessThan(0.002)
    expect(capacityFlow(gas)).toBeGreaterThan(0.008)
  })
})

describe('a thermocouple of type K behind a straight-line chip', () => {
  // instrument facts 1.3, table and direct polynomial
  it.each([
    [-100, -3.553631],
    [25, 1.000242],
    [100, 4.09623],
    [350, 14.293149],
    [800, 33.27538],
    [1000, 41.275606],
  ])('gives at %d °C %d mV', (tC, mV) => {
    expect(typeKmV(tC)).toBeCloseTo(mV, 5)
  })

  // instrument facts 2.1, non-linearity, cold junction 25 and 60
  it.each([
    [300, 25, -3.5],
    [600, 25, 4.2],
    [800, 60, 7.1],
    [100, 25, 0],
  ])('reads %d °C with its cold junction at %d off by %d', (hotC, coldC, off) => {
    expect(straightLineC(hotC, coldC) - hotC).toBeCloseTo(off, 0)
  })
})
