import { readFileSync } from 'node:fs'
import { gunzipSync } from 'node:zlib'
import { expect, it } from 'vitest'
import { against, kilnEfficiency } from '../../../server/domain/yield/efficiency.ts'
import { expectCharge, usualCharge } from '../../../server/domain/yield/expect.ts'
import { taken } from '../../support/taken.ts'

const lines = gunzipSync(readFileSync(new URL('../../../server/simulator/demo/demo-firing.jsonl.gz', import.meta.url)))
  .toString()
  .trim()
  .split('\n')
  .map((line) => JSON.parse(line) as Record<string, unknown>)
const numberOf = (action: string, field: string): number =>
  lines.filter((line) => line['action'] === action).reduce((sum, line) => sum + Number(line[field] ?? 0), 0)

// Trade facts 3.2 (34.0 % of ten runs of a brick kiln, 28 to 38 % of a container kiln) and 3.3.4 (25 to 40 % of the wood from a retort heated from outside)
it('the demo gives what its own plan lets expect, and no more than published kilns gave', () => {
  const charge = { massKg: numberOf('load', 'massKg'), moisturePct: numberOf('load', 'moisturePct') }
  const plan = taken(expectCharge({ ...usualCharge, ...charge, condenser: 'wet-cloths' }))
  const charcoalKg = numberOf('unload', 'charcoalKg')
  const crudeL = numberOf('swap-bottle', 'litres')
  expect(against(charcoalKg, plan.charcoalKg).verdict).toBe('within')
  expect(against(crudeL, plan.crudeL).verdict).toBe('within')
  expect(taken(kilnEfficiency(charge, charcoalKg, 0)).dryPct).toBeLessThan(38)
  expect((100 * crudeL * 1.01) / plan.dryKg).toBeLessThan(40)
})
