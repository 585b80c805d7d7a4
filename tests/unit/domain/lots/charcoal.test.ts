import { describe, expect, it } from 'vitest'
import type { CharcoalLot, CharcoalValues, LotEntry } from '../../../../server/contract/lots.ts'
import { airingOf } from '../../../../server/domain/lots/airing.ts'
import { gradeCharcoal } from '../../../../server/domain/lots/grade.ts'
import { admit, foldLedger } from '../../../../server/domain/lots/ledger.ts'
import { entry } from '../../../support/lot-story.ts'
import { taken } from '../../../support/taken.ts'

const hour = 3_600_000
const weighed = entry('k1', '2026-10-16', { what: 'charcoal', lot: '21', firing: 'f1', massG: 15_100, finesG: 900, demo: true })

function lotOf(entries: readonly LotEntry[]): CharcoalLot {
  const lot = taken(foldLedger(entries)).lots.get('21')
  if (lot?.kind !== 'charcoal') throw new Error('lot 21 is missing')
  return lot
}

describe('charcoal that is put away', () => {
  it('is spread out a day before it goes under a roof, and carried after two weeks', () => {
    const spread = lotOf([weighed, entry('k2', '2026-10-16', { what: 'air', lot: '21' })])
    const start = spread.airedAt ?? 0
    // 24 h in the open: FAO-type advice (from memory); 14 days of weathering: IMDG 42-24, special provision 978
    expect(airingOf(spread, start + 23.9 * hour, true)).toMatchObject({
      state: 'airing',
      storeFrom: start + 24 * hour,
      cautions: ['not-indoors-while-warm'],
    })
    expect(airingOf(spread, start + 24 * hour, true)).toMatchObject({ state: 'aired', cautions: [] })
    expect(airingOf(spread, start, true).carryFrom - spread.drawnAt).toBe(14 * 24 * hour)
  })

  it('counts as warm while it was never spread, or the clock is in doubt', () => {
    expect(airingOf(lotOf([weighed]), weighed.at + 1000 * hour, true)).toMatchObject({ state: 'not-aired', storeFrom: null })
    const spread = lotOf([weighed, entry('k2', '2026-10-16', { what: 'air', lot: '21' })])
    expect(airingOf(spread, weighed.at + 1000 * hour, false)).toMatchObject({
      state: 'airing',
      cautions: ['not-indoors-while-warm', 'clock-unconfirmed'],
    })
  })

  it('warns of a pile above 40 °C and of one that went in too soon', () => {
    // Dzonzi-Undi et al. 2014: above 40 °C even a small heap may ignite
    const put = entry('k3', '2026-10-16', { what: 'store', lot: '21', place: 'shed', pileC: 41 })
    expect(airingOf(lotOf([weighed, put]), weighed.at + 1000 * hour, true).cautions).toEqual([
      'not-indoors-while-warm',
      'pile-too-warm',
      'stored-before-aired',
    ])
  })

  it('never gives out more than there is, nor has more fines than mass', () => {
    const out = (massG: number) => admit([weighed], entry('k4', '2026-10-20', { what: 'charcoal-out', lot: '21', massG }))
    expect(taken(out(15_100)).lots.get('21')).toMatchObject({ leftG: 0 })
    expect(out(15_101)).toMatchObject({ ok: false, problems: [{ code: 'more-than-there-is' }] })
    expect(admit([], entry('k5', '2026-10-20', { what: 'charcoal', lot: '22', firing: null, massG: 10, finesG: 11 }))).toMatchObject({
      ok: false,
      problems: [{ code: 'too-large', field: 'finesG' }],
    })
  })
})

describe('lump charcoal against EN 1860-2', () => {
  const right: CharcoalValues = {
    fixedCarbonPct: 75,
    ashPct: 8,
    moisturePct: 8,
    over80Pct: 10,
    over20Pct: 80,
    under10Pct: 7,
    bulkKgPerM3: 130,
  }

  it('passes at every limit', () => {
    expect(gradeCharcoal({ massG: 1000, finesG: 0, values: right }).verdict).toBe('pass')
  })

  it.each<[keyof CharcoalValues, number]>([
    ['fixedCarbonPct', 74.9],
    ['ashPct', 8.1],
    ['moisturePct', 8.1],
    ['over80Pct', 10.1],
    ['over20Pct', 79.9],
    ['under10Pct', 7.1],
    ['bulkKgPerM3', 129],
  ])('fails when %s is %d', (name, value) => {
    expect(gradeCharcoal({ massG: 1000, finesG: 0, values: { ...right, [name]: value } }).verdict).toBe('fail')
  })

  it('fails the mean of fifteen market brands for fixed carbon and fines', () => {
    // Anater et al. 2019: moisture 5.79, fixed carbon 74.95, ash 2.12, fines 8.27 %
    const market = gradeCharcoal({ massG: 1000, finesG: 82.7, values: { fixedCarbonPct: 74.95, ashPct: 2.12, moisturePct: 5.79 } })
    expect(market.clauses.filter(({ verdict }) => verdict === 'fail').map(({ clause }) => clause)).toEqual(['fixedCarbonPct', 'under10Pct'])
  })

  it('is not measured, and no pass, with only the fines known', () => {
    expect(gradeCharcoal({ massG: 1000, finesG: 60, values: null }).verdict).toBe('not-measured')
  })
})
