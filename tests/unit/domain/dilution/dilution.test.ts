import { describe, expect, it } from 'vitest'
import type { Ratio, UseId } from '../../../../server/contract/dilution.ts'
import { useIds } from '../../../../server/contract/dilution.ts'
import type { CondensateLot } from '../../../../server/contract/lots.ts'
import { lastUseOn, sprayerCard } from '../../../../server/domain/dilution/card.ts'
import { asFold, asParts, otherWay, readRatio } from '../../../../server/domain/dilution/convention.ts'
import { mix } from '../../../../server/domain/dilution/mix.ts'
import type { Tank } from '../../../../server/domain/dilution/mix.ts'
import { ends, firstRatio, offeredRates } from '../../../../server/domain/dilution/offered.ts'
import { rates, touches } from '../../../../server/domain/dilution/tables/rates.ts'
import { foldLedger } from '../../../../server/domain/lots/ledger.ts'
import { bottle, demijohn, entry, lifeOfALot } from '../../../support/lot-story.ts'
import { taken } from '../../../support/taken.ts'

const parts = (water: number): Ratio => ({ convention: 'parts', water })
const fold = (times: number): Ratio => ({ convention: 'fold', fold: times })
const water20: Tank = { ml: 20_000, holds: 'water' }
const today = { date: '2027-01-14', clockSure: true }

function lot8(more: Partial<CondensateLot> = {}): CondensateLot {
  const lot = taken(foldLedger(lifeOfALot)).lots.get('8')
  if (lot?.kind !== 'condensate') throw new Error('lot 8 is missing')
  return { ...lot, ...more }
}

describe('the two ways of counting', () => {
  it.each([
    [parts(20), fold(21)],
    [parts(500), fold(501)],
    [parts(1), fold(2)],
  ])('%j is %j and back', (one, other) => {
    expect(otherWay(one)).toEqual(other)
    expect(otherWay(other)).toEqual(one)
    expect(asFold(one)).toBe(asFold(other))
    expect(asParts(one)).toBe(asParts(other))
  })

  it('differs by half a per cent at 200 and by a fifth at 5', () => {
    // arithmetic of the two ways of counting; at 200 and at 5 as the trade's tables are warned of
    const share = (n: number): number => asFold(parts(n)) / asFold(fold(n)) - 1
    expect(share(200)).toBeCloseTo(0.005, 10)
    expect(share(5)).toBeCloseTo(0.2, 10)
    // the other way round, of the stronger mixture: 17 %
    expect(1 - asFold(fold(5)) / asFold(parts(5))).toBeCloseTo(0.167, 3)
  })

  it.each<[string, Ratio]>([
    ['1:500', parts(500)],
    [' 1 : 500 ', parts(500)],
    ['2:1000', parts(500)],
    ['500x', fold(500)],
    ['500-fold', fold(500)],
    ['500 fold', fold(500)],
    ['0.2 %', fold(500)],
    ['0,2%', fold(500)],
  ])('reads %j', (text, ratio) => {
    expect(readRatio(text)).toEqual({ ok: true, value: ratio })
  })

  it.each<[string, string]>([
    ['500:1', 'ratio-reversed'],
    ['500', 'wrong-unit'],
    ['1/500', 'wrong-unit'],
    ['', 'wrong-unit'],
    ['0:500', 'too-small'],
    ['1:0', 'ratio-reversed'],
    ['1x', 'too-small'],
    ['0 %', 'not-a-number'],
    ['80 %', 'too-small'],
    ['1:200000', 'too-large'],
  ])('refuses %j as %s', (text, code) => {
    expect(readRatio(text)).toMatchObject({ ok: false, problems: [{ code }] })
  })

  it('says how a reversed ratio should be written', () => {
    expect(readRatio('500:1')).toMatchObject({ ok: false, problems: [{ params: { wanted: '1:500' } }] })
  })
})

describe('vinegar into a tank', () => {
  it.each<[string, Ratio, Tank, number, number]>([
    // the drawing: 1 part to 500 parts of water, 20 L of water, 40 mL
    ['1:500 into 20 L of water', parts(500), water20, 40, 20_000],
    ['500-fold making 20 L', fold(500), { ml: 20_000, holds: 'finished' }, 40, 19_960],
    ['1:500 making 20 L', parts(500), { ml: 20_000, holds: 'finished' }, 39.92, 19_960.08],
    // Appropriate Technology Association of Thailand: 1:30 at 6 L/m², so 100 m² take 600 L with 20 L in 600 L of water
    ['1:30 into 600 L', parts(30), { ml: 600_000, holds: 'water' }, 20_000, 600_000],
    // Japan Wood Vinegar Association: rice seed 50-fold, here 5 L
    ['50-fold making 5 L', fold(50), { ml: 5000, holds: 'finished' }, 100, 4900],
    // orchid doses, Londrina: 0.1 % of 1 L is 1 mL, 0.6 % is 6 mL
    ['0.1 % making 1 L', fold(1000), { ml: 1000, holds: 'finished' }, 1, 999],
    ['0.6 % making 1 L', fold(1000 / 6), { ml: 1000, holds: 'finished' }, 6, 994],
  ])('%s', (_, ratio, tank, vinegarMl, waterMl) => {
    const use: UseId = asFold(ratio) < 100 ? 'soil-before-planting' : 'leaves-grown'
    const mixture = taken(mix(use, ratio, tank))
    expect(mixture.vinegarMl).toBeCloseTo(vinegarMl, 2)
    expect(mixture.waterMl).toBeCloseTo(waterMl, 2)
    expect(mixture.totalMl).toBeCloseTo(vinegarMl + waterMl, 6)
  })

  // Okayama Prefectural Library, citing three books: stronger than 100-fold kills growing plants, 500-fold or weaker is the rule
  it.each<[Ratio, 'refused' | 'cautioned' | 'plain']>([
    [parts(20), 'refused'],
    [fold(99), 'refused'],
    [fold(100), 'cautioned'],
    [parts(99), 'cautioned'],
    [parts(100), 'cautioned'],
    [fold(499), 'cautioned'],
    [fold(500), 'plain'],
    [parts(500), 'plain'],
  ])('%j on leaves is %s', (ratio, outcome) => {
    const mixture = mix('leaves-grown', ratio, water20)
    if (!mixture.ok) expect([outcome, mixture.problems.map(({ code }) => code)]).toEqual(['refused', ['too-strong-for-plants']])
    else expect(mixture.value.cautions.includes('stronger-than-500')).toBe(outcome === 'cautioned')
    expect(mixture.ok).toBe(outcome !== 'refused')
  })

  it('lets bare soil have more, with a wait before planting, and still the mask', () => {
    const cautions = taken(mix('soil-before-planting', parts(5), water20)).cautions
    expect(cautions).toEqual([
      'wait-before-planting',
      'gloves-goggles',
      'mask',
      'not-with-alkalis',
      'away-from-fish',
      'no-claim',
      'local-law',
    ])
  })

  it('warns of doing it again up to 1000-fold and no further', () => {
    const cautions = (times: number) => taken(mix('leaves-grown', fold(times), water20)).cautions
    expect(cautions(999)).toContain('repeated-stronger-than-1000')
    expect(cautions(1000)).not.toContain('repeated-stronger-than-1000')
  })

  it('gives living plants a trial patch and five days', () => {
    expect(taken(mix('leaves-grown', parts(1500), water20)).cautions).toEqual([
      'test-patch',
      'five-days-between',
      'gloves-goggles',
      'mask',
      'not-with-alkalis',
      'away-from-fish',
      'no-claim',
      'local-law',
    ])
  })

  it.each<[string, UseId, Ratio, Tank, string]>([
    ['a tank of nothing', 'leaves-grown', parts(500), { ml: 0, holds: 'water' }, 'zero-tank'],
    ['a tank of a sip', 'leaves-grown', parts(500), { ml: 99, holds: 'water' }, 'too-small'],
    ['a tank below nothing', 'leaves-grown', parts(500), { ml: -5, holds: 'water' }, 'too-small'],
    ['a ratio upside down', 'compost', parts(0.01), water20, 'ratio-reversed'],
    ['no number', 'compost', parts(Number.NaN), water20, 'not-a-number'],
    ['feed', 'feed', parts(300), water20, 'not-for-feed'],
  ])('refuses %s', (_, use, ratio, tank, code) => {
    const tried = mix(use, ratio, tank)
    expect(tried.ok ? [] : tried.problems.map((one) => one.code)).toContain(code)
  })
})

describe('the rates beside a mixture', () => {
  it.each<[UseId, Ratio, number]>([
    ['leaves-grown', fold(500), 4],
    ['leaves-grown', parts(500), 4],
    ['leaves-grown', fold(5000), 0],
    ['seed-soak', fold(50), 1],
    ['compost', parts(100), 1],
    ['compost', parts(110), 0],
    ['compost', parts(102), 0],
  ])('%s at %j: %d name this strength', (use, ratio, count) => {
    expect(taken(mix(use, ratio, water20)).rates).toHaveLength(count)
  })
})

describe('the table of rates', () => {
  it('has a source beside every row, and a use for every row', () => {
    for (const rate of rates) {
      expect(rate.source.length).toBeGreaterThan(8)
      expect(rate.from).toBeLessThanOrEqual(rate.to)
    }
    expect(new Set(rates.map(({ use }) => use))).toEqual(new Set(useIds))
  })

  it('offers nothing to animals, nor to leaves what kills them', () => {
    expect(offeredRates('feed')).toEqual([])
    for (const use of useIds) {
      for (const rate of offeredRates(use)) {
        for (const ratio of ends(rate)) expect([rate.id, mix(use, ratio, water20).ok]).toEqual([rate.id, true])
      }
    }
    expect(rates.find(({ from, use }) => use === 'leaves-grown' && from === 20)?.offered).toBe(false)
  })

  // published figures, by their own way of counting
  it.each<[UseId, string | null, 'parts' | 'fold', number, number]>([
    ['leaves-grown', null, 'fold', 500, 1000],
    ['leaves-grown', 'cabbage', 'parts', 1500, 1500],
    ['leaves-grown', 'maize', 'parts', 300, 300],
    ['leaves-young', 'cabbage seedlings', 'fold', 2000, 2000],
    ['flower-fruit', 'chilli', 'parts', 300, 300],
    ['plant-base', 'strawberry', 'parts', 200, 200],
    ['plant-base', 'pepper', 'parts', 1500, 1500],
    ['seed-soak', 'rice, 24 h', 'fold', 50, 50],
    ['soil-before-planting', null, 'parts', 30, 30],
    ['soil-before-planting', null, 'fold', 20, 30],
    ['compost', null, 'parts', 100, 100],
    ['pen-smell', null, 'fold', 30, 100],
  ])('holds %s, %s: %s %d to %d', (use, crop, convention, from, to) => {
    expect(
      rates.filter((rate) => rate.use === use && rate.crop === crop && rate.convention === convention && rate.from === from),
    ).toMatchObject([{ to }])
  })

  it('starts every use at the mildest of its rates for no particular crop', () => {
    expect(firstRatio('leaves-grown')).toEqual(fold(1000))
    expect(firstRatio('seed-soak')).toEqual(fold(50))
    expect(firstRatio('compost')).toEqual(parts(100))
    expect(firstRatio('feed')).toBeNull()
    expect(touches['potted-orchids']).toBe('living-plants')
  })
})

describe('the sprayer’s card', () => {
  const mixture = taken(mix('leaves-grown', parts(500), water20))

  it('says how much is left, how many tanks that makes, and the day before which not again', () => {
    expect(taken(sprayerCard(lot8(), mixture, today, null))).toMatchObject({
      lot: '8',
      leftMl: 6960,
      tanksLeft: 175,
      notAgainBefore: '2027-01-19',
    })
  })

  it.each<[string, Partial<CondensateLot>, string]>([
    ['unrested', { filled: '2026-12-20' }, 'lot-unrested'],
    ['unmeasured', { lastCheck: null }, 'lot-unmeasured'],
    ['failed', { treatedWood: true }, 'lot-failed'],
    ['empty', { volumeMl: 39 }, 'more-than-there-is'],
  ])('is not printed for a lot that is %s', (_, more, code) => {
    const card = sprayerCard(lot8(more), mixture, today, null)
    expect(card.ok ? [] : card.problems.map((one) => one.code)).toEqual([code])
  })

  it('is not printed within five days on the same field, whichever lot was used, and is on another', () => {
    const other = entry('o1', '2026-10-01', { what: 'fill', lot: '5', firing: null, bottles: [bottle(1, 900)], vessel: demijohn })
    const used = entry('u', '2027-01-10', {
      what: 'use',
      lot: '5',
      volumeMl: 40,
      use: 'leaves-grown',
      waterMl: 20_000,
      field: ' North  bed',
    })
    const before = { ...used, id: 'u0', date: '2027-01-02', at: used.at - 8 * 86_400_000, doneAt: used.at - 8 * 86_400_000 }
    const ledger = taken(foldLedger([...lifeOfALot, other, before, used]))
    expect(lastUseOn(ledger, 'north bed')).toBe('2027-01-10')
    expect(lastUseOn(ledger, 'south bed')).toBeNull()
    const card = (date: string, field: string) => sprayerCard(lot8(), mixture, { ...today, date }, lastUseOn(ledger, field))
    expect(card('2027-01-14', 'north bed')).toMatchObject({
      ok: false,
      problems: [{ code: 'interval-too-short', params: { date: '2027-01-15' } }],
    })
    expect(card('2027-01-15', 'north bed').ok).toBe(true)
    expect(card('2027-01-14', 'south bed').ok).toBe(true)
  })

  it('names no pest and promises nothing', () => {
    expect(JSON.stringify([rates, taken(sprayerCard(lot8(), mixture, today, null))])).not.toMatch(
      /insect|aphid|fung|nematod|mildew|weed|kills pests|repel/i,
    )
  })
})
