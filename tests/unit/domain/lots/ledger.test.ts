import { describe, expect, it } from 'vitest'
import type { CondensateLot, LotEntry, LotEvent } from '../../../../server/contract/lots.ts'
import { balanceGapMl, heldMl } from '../../../../server/domain/lots/book.ts'
import { admit, foldLedger, nextLotId } from '../../../../server/domain/lots/ledger.ts'
import { bottle, demijohn, entry, lifeOfALot } from '../../../support/lot-story.ts'
import { taken } from '../../../support/taken.ts'

function liquid(entries: readonly LotEntry[], id: string): CondensateLot {
  const lot = taken(foldLedger(entries)).lots.get(id)
  if (lot?.kind !== 'condensate') throw new Error(`no condensate lot ${id}`)
  return lot
}

function refusal(entries: readonly LotEntry[], event: LotEvent, more: Partial<LotEntry> = {}) {
  const tried = admit(entries, entry('new', '2027-02-01', event, more))
  return tried.ok ? null : tried.problems.map(({ code }) => code)
}

describe('the ledger of lots', () => {
  it('follows a lot from its bottles to the drawn middle', () => {
    const crude = liquid(lifeOfALot, '7')
    const drawn = liquid(lifeOfALot, '8')
    expect(crude.volumeMl).toBe(150)
    expect(crude.layers).toMatchObject({ lightOilMl: 100, vinegarMl: 50, tarMl: 0 })
    expect(drawn).toMatchObject({
      stage: 'drawn',
      volumeMl: 7000,
      filled: '2026-10-14',
      drawn: '2027-01-12',
      firings: ['f1'],
      parents: ['7'],
    })
    const ledger = taken(foldLedger(lifeOfALot))
    expect(ledger.balance).toEqual({
      inMl: 8200,
      stockMl: 7150,
      tarTinMl: 1000,
      oilTinMl: 0,
      usedMl: 0,
      givenMl: 0,
      lostMl: 50,
      measuredDifferenceMl: 0,
    })
    expect(balanceGapMl(ledger)).toBe(0)
    expect(heldMl(ledger)).toBe(7150)
    expect(nextLotId(ledger)).toBe('9')
  })

  it('books what layers measure differently, in either direction', () => {
    const fill = lifeOfALot.slice(0, 1)
    const less = taken(
      foldLedger([...fill, entry('l', '2027-01-12', { what: 'layers', lot: '7', lightOilMl: 0, vinegarMl: 7000, tarMl: 900 })]),
    )
    expect(less.balance).toMatchObject({ measuredDifferenceMl: -300, stockMl: 7900 })
    expect(balanceGapMl(less)).toBe(0)
    expect(refusal(fill, { what: 'layers', lot: '7', lightOilMl: 500, vinegarMl: 7700, tarMl: 1000 })).toEqual(['layers-exceed-lot'])
  })

  it('stays crude when drawn before its ninety days, or while nobody knows the date', () => {
    const early = lifeOfALot.slice(0, 2).map((one) => ({ ...one, date: one.id === 'e2' ? '2027-01-11' : one.date }))
    const draw: LotEvent = { what: 'draw', lot: '7', layer: 'vinegar', volumeMl: 1000, lossMl: 0, into: { lot: '8', vessel: demijohn } }
    expect(liquid([...early, entry('d', '2027-01-11', draw)], '8').stage).toBe('crude')
    expect(liquid([...early, entry('d', '2027-01-12', draw)], '8').stage).toBe('drawn')
    expect(liquid([...early, entry('d', '2027-01-12', draw, { clockSure: false })], '8').stage).toBe('crude')
  })

  it('never draws more than the layer holds, nor from layers that nobody measured', () => {
    const into = { lot: '9', vessel: demijohn }
    expect(refusal(lifeOfALot, { what: 'draw', lot: '7', layer: 'vinegar', volumeMl: 51, lossMl: 0, into })).toEqual(['more-than-there-is'])
    expect(refusal(lifeOfALot, { what: 'draw', lot: '7', layer: 'light-oil', volumeMl: 60, lossMl: 41 })).toEqual(['more-than-there-is'])
    expect(refusal(lifeOfALot, { what: 'draw', lot: '8', layer: 'vinegar', volumeMl: 10, lossMl: 0, into })).toEqual([
      'layers-not-measured',
    ])
    expect(refusal(lifeOfALot, { what: 'draw', lot: '7', layer: 'vinegar', volumeMl: 10, lossMl: 0 })).toEqual(['missing'])
  })

  it('lets a joined lot rest as long as its youngest part, with every window it came from', () => {
    const second = entry('g1', '2026-11-02', {
      what: 'fill',
      lot: '9',
      firing: 'f2',
      bottles: [bottle(1, 1500, { highC: 170 })],
      vessel: demijohn,
      wood: 'mango',
    })
    const join = entry('g2', '2026-11-03', {
      what: 'join',
      lot: '10',
      from: [
        { lot: '7', volumeMl: 5000 },
        { lot: '9', volumeMl: 1500 },
      ],
      vessel: demijohn,
    })
    const entries = [...lifeOfALot.slice(0, 1), second, join]
    expect(liquid(entries, '10')).toMatchObject({
      filled: '2026-11-02',
      volumeMl: 6500,
      firings: ['f1', 'f2'],
      wood: ['eucalyptus', 'mango'],
    })
    expect(liquid(entries, '10').bottles).toHaveLength(3)
    expect(liquid(entries, '7').volumeMl).toBe(3200)
    expect(balanceGapMl(taken(foldLedger(entries)))).toBe(0)
  })

  it('does not know the rest of a joined lot when the day of one part is in doubt', () => {
    const doubt = entry(
      'g1',
      '2026-11-02',
      { what: 'fill', lot: '9', firing: null, bottles: [bottle(1, 500)], vessel: demijohn },
      { clockSure: false },
    )
    const from = [
      { lot: '7', volumeMl: 5000 },
      { lot: '9', volumeMl: 500 },
    ]
    const entries = [...lifeOfALot.slice(0, 1), doubt, entry('g2', '2026-11-03', { what: 'join', lot: '10', from, vessel: demijohn })]
    expect(liquid(entries, '10').filled).toBeNull()
  })

  it('splits without loss and moves with the loss named', () => {
    const parts = [
      { lot: '11', volumeMl: 3000, vessel: demijohn },
      { lot: '12', volumeMl: 4000, vessel: demijohn },
    ]
    const entries = [
      ...lifeOfALot,
      entry('s', '2027-01-20', { what: 'split', lot: '8', into: parts }),
      entry('m', '2027-01-21', { what: 'move', lot: '11', vessel: { ...demijohn, place: 'cellar' }, lossMl: 20 }),
    ]
    expect(liquid(entries, '8').volumeMl).toBe(0)
    expect(liquid(entries, '11')).toMatchObject({ volumeMl: 2980, vessel: { place: 'cellar' } })
    expect(balanceGapMl(taken(foldLedger(entries)))).toBe(0)
    expect(refusal(entries, { what: 'split', lot: '12', into: [{ lot: '13', volumeMl: 4001, vessel: demijohn }] })).toEqual([
      'more-than-there-is',
    ])
    expect(refusal(entries, { what: 'move', lot: '12', vessel: { ...demijohn, capacityMl: 3000 }, lossMl: 0 })).toEqual(['too-large'])
  })

  it('keeps what was corrected and counts the newest word', () => {
    const right = entry('c1', '2027-01-12', { what: 'layers', lot: '7', lightOilMl: 100, vinegarMl: 7060, tarMl: 1000 }, { corrects: 'e2' })
    const entries = [...lifeOfALot, right]
    expect(taken(admit(lifeOfALot, right)).balance.measuredDifferenceMl).toBe(-40)
    expect(liquid(entries, '7').layers?.vinegarMl).toBe(10)
    const again = entry('c2', '2027-01-12', { what: 'layers', lot: '7', lightOilMl: 100, vinegarMl: 7080, tarMl: 1000 }, { corrects: 'c1' })
    expect(liquid([...entries, again], '7').layers?.vinegarMl).toBe(30)
    expect(entries.filter(({ id }) => id === 'e2')).toHaveLength(1)
  })

  it('refuses a correction that would leave a vessel below empty afterwards', () => {
    const short: LotEvent = { what: 'layers', lot: '7', lightOilMl: 100, vinegarMl: 6000, tarMl: 1000 }
    expect(refusal(lifeOfALot, short, { corrects: 'e2' })).toEqual(['correction-breaks-stock'])
    expect(refusal(lifeOfALot, { what: 'void' }, { corrects: 'e1' })).toEqual(['correction-breaks-stock'])
    expect(refusal(lifeOfALot, { what: 'void' }, { corrects: 'e5' })).toBeNull()
  })

  it.each<[string, LotEvent, Partial<LotEntry>, string[]]>([
    ['an id that is there', { what: 'loss', lot: '8', volumeMl: 1, why: 'spilled' }, { id: 'e1' }, ['id-taken']],
    ['a lot that is there', { what: 'fill', lot: '7', firing: null, bottles: [bottle(1, 10)], vessel: demijohn }, {}, ['id-taken']],
    ['a lot that is not', { what: 'give', lot: '99', volumeMl: 1 }, {}, ['no-such-lot']],
    ['a correction of nothing', { what: 'void' }, { corrects: 'zz' }, ['no-such-entry']],
    ['a bare void', { what: 'void' }, {}, ['missing']],
    ['half a millilitre', { what: 'give', lot: '8', volumeMl: 0.5 }, {}, ['not-a-number']],
    ['nothing', { what: 'give', lot: '8', volumeMl: 0 }, {}, ['too-small']],
    ['more than there is', { what: 'give', lot: '8', volumeMl: 7001 }, {}, ['more-than-there-is']],
    ['no bottles', { what: 'fill', lot: '9', firing: null, bottles: [], vessel: demijohn }, {}, ['missing']],
    ['pH 15', { what: 'check', lot: '8', norm: 'council', values: { ph: 15 } }, {}, ['too-large']],
    [
      'a density in kg/m³',
      { what: 'check', lot: '8', norm: 'council', values: { density: { gPerMl: 1011, atC: 20 } } },
      {},
      ['density-in-kg-per-m3'],
    ],
    ['30 February', { what: 'give', lot: '8', volumeMl: 1 }, { date: '2027-02-30' }, ['not-a-date']],
    ['airing a liquid', { what: 'air', lot: '8' }, {}, ['wrong-kind-of-lot']],
  ])('refuses %s and leaves the book as it was', (_, event, more, codes) => {
    const before = taken(foldLedger(lifeOfALot))
    expect(refusal(lifeOfALot, event, more)).toEqual(codes)
    expect(taken(foldLedger(lifeOfALot))).toEqual(before)
  })

  it('says how much there is when more is asked', () => {
    expect(admit(lifeOfALot, entry('n', '2027-02-01', { what: 'give', lot: '8', volumeMl: 7500 }))).toEqual({
      ok: false,
      problems: [{ code: 'more-than-there-is', field: 'volumeMl', params: { lot: '8', value: 7500, high: 7000, unit: 'mL', entry: 'n' } }],
    })
  })
})
