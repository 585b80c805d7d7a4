import { expect, test } from 'vitest'
import { condense, usualCloths } from '../../../../server/domain/kiln/condenser.ts'

// 0.7 mole of steam to 0.3 of dry gas (instrument facts 8.3: dew point 90.28 °C), 3 kg/h of steam
const steam = 3 / 3600
const dryGas = (steam * 29 * 0.3) / (18 * 0.7)
const flow = { smokeC: 110, dryGas, steam, organics: 0 }

test('heat for 3 kg/h from 110 °C to a cold outlet is about 2.1 kW (instrument facts 8.4)', () => {
  const cold = condense(flow, 20, 1000, { dryKWK: 1, wetKWK: 1, holdsKg: 1 })
  expect(cold.outletC).toBeLessThan(40)
  expect(cold.heatKW).toBeGreaterThan(1.95)
  expect(cold.heatKW).toBeLessThan(2.25)
})

test('the condensed share at the outlet it reaches is that of the table (instrument facts 8.3)', () => {
  const table = [
    [50, 0.9405],
    [60, 0.895],
    [70, 0.8093],
    [80, 0.6231],
  ] as const
  for (const [t, share] of table) {
    let low = 0.001
    let high = 1
    for (let k = 0; k < 50; k++) {
      const mid = Math.sqrt(low * high)
      if (condense(flow, 20, 0, { dryKWK: mid, wetKWK: mid, holdsKg: 1 }).outletC > t) low = mid
      else high = mid
    }
    const at = condense(flow, 20, 0, { dryKWK: low, wetKWK: low, holdsKg: 1 })
    expect(at.waterKgS / steam).toBeCloseTo(share, 1)
  }
})

test('wet cloths cool more than dry ones, and dry out by what they cool', () => {
  const wet = condense(flow, 20, usualCloths.holdsKg, usualCloths)
  const dry = condense(flow, 20, 0, usualCloths)
  expect(wet.outletC).toBeLessThan(dry.outletC - 10)
  expect(wet.driedKgS).toBeGreaterThan(0)
  expect(dry.driedKgS).toBe(0)
  expect(wet.waterKgS).toBeGreaterThan(dry.waterKgS)
})
