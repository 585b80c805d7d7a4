import { describe, expect, it } from 'vitest'
import type { FiringSummary } from '../../../../../server/contract/live.ts'
import { foldLedger } from '../../../../../server/domain/lots/ledger.ts'
import { crudeLitresOf, hoursToSealOf } from '../../../../../web/src/views/plan/record.ts'
import { bottle, demijohn, entry } from '../../../../support/lot-story.ts'
import { taken } from '../../../../support/taken.ts'

const hour = 3_600_000
function firing(sealedH: number | null, demo = false): FiringSummary {
  const phases: FiringSummary['phases'] = [{ phase: 'kindling', from: 0, to: null }]
  if (sealedH !== null) phases.push({ phase: 'cooling', from: sealedH * hour, to: null })
  return { id: 'f', kiln: 'k', kilnName: '', title: '', startedAt: 0, endedAt: null, demo, phases, spark: { t: [], wall: [], smoke: [] } }
}

describe('this kiln’s own record', () => {
  it('counts sealed firings only, and no demo', () => {
    expect(hoursToSealOf([firing(7.5), firing(null), firing(8), firing(3, true)])).toEqual([7.5, 8])
  })

  it('knows the litres of a firing after three, not of lots that were poured from others', () => {
    const fills = [5, 8, 6].map((litres, n) =>
      entry(`e${String(n)}`, '2026-10-14', {
        what: 'fill',
        lot: String(n + 1),
        firing: `f${String(n)}`,
        bottles: [bottle(1, litres * 1000)],
        vessel: demijohn,
      }),
    )
    const split = entry('s', '2026-10-15', { what: 'split', lot: '1', into: [{ lot: '9', volumeMl: 100, vessel: demijohn }] })
    const lots = (entries: typeof fills) => [...taken(foldLedger(entries)).lots.values()]
    expect(crudeLitresOf(lots(fills.slice(0, 2)))).toBeNull()
    expect(crudeLitresOf(lots([...fills, split]))).toEqual({ low: 5, likely: 6, high: 8 })
  })
})
