import { describe, expect, it } from 'vitest'
import type { CondensateLot } from '../../../../../server/contract/lots.ts'
import { foldLedger } from '../../../../../server/domain/lots/ledger.ts'
import { answerOf, answerOfAll } from '../../../../../web/src/views/lots/headline.ts'
import { layersIn } from '../../../../../web/src/views/lots/vessel-layers.ts'
import { lifeOfALot } from '../../../../support/lot-story.ts'
import { taken } from '../../../../support/taken.ts'

const ledger = taken(foldLedger(lifeOfALot))
function lot(id: string, more: Partial<CondensateLot> = {}): CondensateLot {
  const found = ledger.lots.get(id)
  if (found?.kind !== 'condensate') throw new Error(`lot ${id} is missing`)
  return { ...found, ...more }
}
const on = (date: string) => ({ date, clockSure: true })

describe('what stands largest', () => {
  it.each<[string, CondensateLot, string, string]>([
    ['the day before its mark', lot('7', { layers: null }), '2027-01-11', 'leave'],
    ['on its mark', lot('7', { layers: null }), '2027-01-12', 'draw'],
    ['when the middle is gone', lot('7'), '2027-01-20', 'dregs'],
    ['drawn and not checked', lot('8', { lastCheck: null }), '2027-01-20', 'checkFirst'],
    ['drawn, checked and right', lot('8'), '2027-01-20', 'usable'],
    ['drawn, checked and wrong', lot('8', { treatedWood: true }), '2027-01-20', 'failed'],
    ['empty', lot('8', { volumeMl: 0 }), '2027-01-20', 'usedUp'],
    ['of an unknown day', lot('8', { filled: null }), '2027-01-20', 'unsure'],
  ])('%s', (_, one, date, say) => {
    expect(answerOf(one, on(date)).say).toBe(say)
  })

  it('is what can be done now, then what is to come first, then what is ready', () => {
    const early = lot('7', { id: '1', layers: null, filled: '2026-11-01' })
    const late = lot('7', { id: '2', layers: null, filled: '2026-12-01' })
    const ripe = lot('7', { id: '3', layers: null })
    const ready = lot('8', { id: '4' })
    expect(answerOfAll([late, early, ready, ripe], on('2027-01-14'))).toEqual({ say: 'ready', lot: '3' })
    expect(answerOfAll([late, early, ready], on('2027-01-14'))).toEqual({ say: 'resting', lot: '1', date: '2027-01-30' })
    expect(answerOfAll([ready], on('2027-01-14'))).toEqual({ say: 'usable', lot: '4' })
    expect(answerOfAll([lot('8', { volumeMl: 0 })], on('2027-01-14'))).toEqual({ say: 'allQuiet' })
    expect(answerOfAll([], on('2027-01-14'))).toEqual({ say: 'empty' })
  })
})

describe('the drawn vessel', () => {
  it('stacks the layers from the bottom in the measure of the vessel, and keeps their words apart', () => {
    const drawn = layersIn(lot('7', { layers: { lightOilMl: 100, vinegarMl: 7100, tarMl: 1000, measured: '2027-01-12' }, volumeMl: 8200 }))
    expect(drawn.bands.map(({ name, height }) => [name, Math.round(height * 10) / 10])).toEqual([
      ['tar', 24.2],
      ['vinegar', 171.8],
      ['oil', 2.4],
    ])
    const [tar, vinegar, oil] = drawn.bands
    expect(vinegar && tar && vinegar.top + vinegar.height).toBeCloseTo(tar?.top ?? 0, 9)
    expect(oil && oil.top + oil.height).toBeCloseTo(vinegar?.top ?? 0, 9)
    const places = drawn.labels.map(({ y }) => y)
    for (let i = 1; i < places.length; i += 1) expect((places[i - 1] ?? 0) - (places[i] ?? 0)).toBeGreaterThanOrEqual(58)
  })

  it('is one layer while nobody has measured', () => {
    expect(layersIn(lot('8')).bands.map(({ name }) => name)).toEqual(['whole'])
  })
})
