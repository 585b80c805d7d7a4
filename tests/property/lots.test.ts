import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { LotEntry, LotEvent, Vessel } from '../../server/contract/lots.ts'
import { balanceGapMl, heldMl } from '../../server/domain/lots/book.ts'
import { admit, foldLedger } from '../../server/domain/lots/ledger.ts'
import { bottle } from '../support/lot-story.ts'
import { taken } from '../support/taken.ts'

const vessel: Vessel = { name: 'barrel', material: 'plastic', capacityMl: 60_000 }
const id = fc.integer({ min: 1, max: 5 }).map(String)
const newId = fc.integer({ min: 3, max: 30 }).map(String)
const ml = fc.oneof(
  { weight: 12, arbitrary: fc.integer({ min: 1, max: 3000 }) },
  { weight: 1, arbitrary: fc.constantFrom(-1, 0.5, Number.NaN, 1e12) },
)

const lossMl = fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: ml })

/** Events of a careless hand: often of lots that are not there, often more than there is. */
const event: fc.Arbitrary<LotEvent> = fc.oneof(
  fc.record({
    what: fc.constant('fill' as const),
    lot: newId,
    firing: fc.constant(null),
    bottles: fc.array(
      ml.map((v) => bottle(1, v)),
      { minLength: 1, maxLength: 3 },
    ),
    vessel: fc.constant(vessel),
  }),
  fc.record({
    what: fc.constant('join' as const),
    lot: newId,
    from: fc.array(fc.record({ lot: id, volumeMl: ml }), { maxLength: 3 }),
    vessel: fc.constant(vessel),
  }),
  fc.record({
    what: fc.constant('split' as const),
    lot: id,
    into: fc.array(fc.record({ lot: newId, volumeMl: ml, vessel: fc.constant(vessel) }), { maxLength: 3 }),
  }),
  fc.record({ what: fc.constant('move' as const), lot: id, vessel: fc.constant(vessel), lossMl }),
  fc.record({ what: fc.constant('layers' as const), lot: id, lightOilMl: ml, vinegarMl: ml, tarMl: ml }),
  fc.record({
    what: fc.constant('draw' as const),
    lot: id,
    layer: fc.constantFrom('light-oil' as const, 'vinegar' as const, 'tar' as const),
    volumeMl: ml,
    lossMl,
    into: fc.record({ lot: newId, vessel: fc.constant(vessel) }),
  }),
  fc.record({ what: fc.constant('loss' as const), lot: id, volumeMl: ml, why: fc.constantFrom('spilled' as const, 'filter' as const) }),
  fc.record({ what: fc.constant('use' as const), lot: id, volumeMl: ml, use: fc.constant('compost'), waterMl: fc.constant(1000) }),
  fc.record({ what: fc.constant('give' as const), lot: id, volumeMl: ml }),
  fc.constant<LotEvent>({ what: 'void' }),
)

const asked = fc.array(
  fc.record({ event, corrects: fc.oneof({ weight: 4, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: fc.nat({ max: 30 }) }) }),
  {
    minLength: 20,
    maxLength: 50,
    size: 'max',
  },
)

/** What a ledger holds after each of the wishes was admitted or refused. */
function live(wishes: readonly { event: LotEvent; corrects: number | undefined }[]): LotEntry[] {
  // three full barrels to begin with, so that there is something to pour
  const start = ['1', '2', '3'].map((lot) => ({ event: { what: 'fill' as const, lot, firing: null, bottles: [bottle(1, 9000)], vessel } }))
  const entries: LotEntry[] = []
  ;[...start.map((one) => ({ ...one, corrects: undefined })), ...wishes].forEach((wish, index) => {
    const at = Date.UTC(2026, 0, 1 + index)
    const target = wish.corrects === undefined ? undefined : entries[wish.corrects % Math.max(1, entries.length)]?.id
    const entry: LotEntry = {
      id: `e${String(index)}`,
      at,
      doneAt: at,
      date: new Date(at).toISOString().slice(0, 10),
      by: 'hand',
      clockSure: true,
      event: wish.event,
      ...(target === undefined ? {} : { corrects: target }),
    }
    if (admit(entries, entry).ok) entries.push(entry)
  })
  return entries
}

describe('whatever is entered', () => {
  it('no vessel and no layer ever holds less than nothing, and the balance closes to the millilitre', () => {
    let admitted = 0
    let corrected = 0
    fc.assert(
      fc.property(asked, (wishes) => {
        const entries = live(wishes)
        admitted += entries.length
        corrected += entries.filter((one) => one.corrects !== undefined).length
        // after every entry, not only the last
        for (let upTo = 0; upTo <= entries.length; upTo += 1) {
          const ledger = taken(foldLedger(entries.slice(0, upTo)))
          expect(balanceGapMl(ledger)).toBe(0)
          expect(heldMl(ledger)).toBe(ledger.balance.stockMl)
          for (const lot of ledger.lots.values()) {
            if (lot.kind !== 'condensate') continue
            expect(lot.volumeMl).toBeGreaterThanOrEqual(0)
            if (lot.layers === null) continue
            const { lightOilMl, vinegarMl, tarMl } = lot.layers
            expect(Math.min(lightOilMl, vinegarMl, tarMl)).toBeGreaterThanOrEqual(0)
            expect(lightOilMl + vinegarMl + tarMl).toBe(lot.volumeMl)
          }
        }
      }),
      { numRuns: 400 },
    )
    // a test of refusals only would prove nothing
    expect(admitted).toBeGreaterThan(3000)
    expect(corrected).toBeGreaterThan(100)
  })

  it('a refused entry changes nothing, and folding twice gives the same', () => {
    fc.assert(
      fc.property(asked, (wishes) => {
        const entries = live(wishes)
        const text = JSON.stringify(entries)
        const first = foldLedger(entries)
        expect(foldLedger(JSON.parse(text) as LotEntry[])).toEqual(first)
        expect(JSON.stringify(entries)).toBe(text)
      }),
      { numRuns: 150 },
    )
  })

  it('the same word again as a correction leaves every lot as it was', () => {
    fc.assert(
      fc.property(asked, fc.nat(), (wishes, pick) => {
        const entries = live(wishes.map((wish) => ({ ...wish, corrects: undefined })))
        const old = entries[pick % Math.max(1, entries.length)]
        if (old === undefined) return
        const before = taken(foldLedger(entries))
        const after = taken(admit(entries, { ...old, id: 'again', corrects: old.id }))
        expect(after.balance).toEqual(before.balance)
        for (const [lot, was] of before.lots) expect({ ...after.lots.get(lot), entries: [] }).toEqual({ ...was, entries: [] })
      }),
      { numRuns: 150 },
    )
  })
})
