import { describe, expect, it } from 'vitest'
import { families } from '../../../server/simulator/firing/plan.ts'
import { makeFiring } from '../../../server/simulator/firing/world.ts'
import { heatLeft } from '../../../server/simulator/kiln/ledger.ts'

// First and second law: what goes in stays in or comes out. Limit 1 % of what went in.
describe.each(families)('a kiln of the family %s', (family) => {
  it.each([1, 2, 3, 4])('keeps its mass and its heat, world %i', (n) => {
    const { plan, course } = makeFiring(`balance-${n}`, { family })
    const { charge, earthStartC, cover } = plan.bed
    const { ledger } = course.bed
    const solids = course.bed.solids()
    const massIn = charge.dryKg * (1 + charge.moistureDb) + ledger.gasInKg
    const massOut = solids.woodKg + solids.charKg + solids.waterKg + solids.heldKg + ledger.gasOutKg
    expect(Math.abs(massIn - massOut) / charge.dryKg).toBeLessThan(0.01)

    const depthM = cover.layersM.reduce((a, b) => a + b, 0)
    const atStart =
      charge.startC * charge.dryKg * ((family === 'zones' ? 1.55 : 1.6) + charge.moistureDb * 4.19) +
      charge.startC * 20 * 0.5 +
      earthStartC * cover.earthKJm3K * depthM * 2.04
    const turnover = ledger.gasInKJ + ledger.fireKJ + ledger.burntKJ
    expect(Math.abs(atStart + heatLeft(ledger) - course.bed.storedKJ()) / turnover).toBeLessThan(0.01)
  })
})
