import { describe, expect, it } from 'vitest'
import type { Checked, EntryProblem } from '../../../../../server/contract/entry-problems.ts'
import { entryProblemCodes } from '../../../../../server/contract/entry-problems.ts'
import { sprayerCard } from '../../../../../server/domain/dilution/card.ts'
import { readRatio } from '../../../../../server/domain/dilution/convention.ts'
import { mix } from '../../../../../server/domain/dilution/mix.ts'
import { readQuantity } from '../../../../../server/domain/entered/quantity.ts'
import { layersFromHeights } from '../../../../../server/domain/lots/layers.ts'
import { admit, foldLedger } from '../../../../../server/domain/lots/ledger.ts'
import { restOf } from '../../../../../server/domain/lots/rest.ts'
import { acidityByTitration } from '../../../../../server/domain/lots/titration.ts'
import { planBack } from '../../../../../server/domain/plan/back.ts'
import { lightBy } from '../../../../../server/domain/plan/light-by.ts'
import { kilnEfficiency } from '../../../../../server/domain/yield/efficiency.ts'
import { expectCharge, usualCharge } from '../../../../../server/domain/yield/expect.ts'
import { moistureByWeighing, wetToDryBasis } from '../../../../../server/domain/yield/moisture.ts'
import { chargeOfPieces } from '../../../../../server/domain/yield/pieces.ts'
import { sentenceOf } from '../../../../../web/src/views/rest/rest-words.ts'
import { en } from '../../../../../web/src/words/rest/en.ts'
import { es } from '../../../../../web/src/words/rest/es.ts'
import { th } from '../../../../../web/src/words/rest/th.ts'
import { bottle, demijohn, entry, lifeOfALot } from '../../../../support/lot-story.ts'
import { taken } from '../../../../support/taken.ts'

const story = taken(foldLedger(lifeOfALot))
const lot = story.lots.get('8')
if (lot?.kind !== 'condensate') throw new Error('lot 8 is missing')
const today = { date: '2027-01-14', clockSure: true }
const spray = taken(mix('leaves-grown', { convention: 'parts', water: 500 }, { ml: 20_000, holds: 'water' }))
const wish = {
  wantedMl: 20_000,
  by: '2027-03-01',
  crudeLPerFiring: { low: 4, likely: 7, high: 10 },
  woodKgPerFiring: 65,
  daysPerFiring: 3,
}
const tell = (event: Parameters<typeof entry>[2], more: Parameters<typeof entry>[3] = {}) =>
  admit(lifeOfALot, entry('n', '2027-02-01', event, more))

/** What people do get wrong, each by the rule that turns it away. */
const mistakes: Checked<unknown>[] = [
  readQuantity('tank', 'volume', 'much'),
  readQuantity('tank', 'volume', '20'),
  readQuantity('mass', 'mass', '-1 kg'),
  wetToDryBasis(120),
  wetToDryBasis(-1),
  moistureByWeighing(5, 6),
  expectCharge({ ...usualCharge, massKg: 0, moisturePct: 30, condenser: 'air-pipe' }),
  chargeOfPieces({ count: 60, lengthM: 0.8, thicknessMm: 80, densityKgPerM3: 700 }, 200),
  kilnEfficiency({ massKg: 60, moisturePct: 20 }, 12, 13),
  readRatio('500:1'),
  readRatio('500'),
  readRatio('0:500'),
  mix('leaves-grown', { convention: 'parts', water: 20 }, { ml: 0, holds: 'water' }),
  mix('feed', { convention: 'parts', water: 300 }, { ml: 10, holds: 'water' }),
  layersFromHeights(10, 5, 20, 100),
  acidityByTitration({ sample: { ml: 5 }, baseMolPerL: 0.1, baseMl: 3, blankMl: 4 }),
  lightBy('2026-06-21', 95, 20, 120, []),
  lightBy('2026-06-21', 75, 20, 120, []),
  lightBy('21.6.2026', 15, 20, 120, []),
  planBack(wish, story, today),
  planBack(wish, story, { ...today, clockSure: false }),
  tell({ what: 'give', lot: '8', volumeMl: 7001 }),
  tell({ what: 'give', lot: '8', volumeMl: 0.5 }),
  tell({ what: 'give', lot: '99', volumeMl: 1 }),
  tell({ what: 'air', lot: '8' }),
  tell({ what: 'void' }),
  tell({ what: 'void' }, { corrects: 'zz' }),
  tell({ what: 'void' }, { corrects: 'e1' }),
  tell({ what: 'fill', lot: '7', firing: null, bottles: [bottle(1, 10)], vessel: demijohn }),
  tell({ what: 'fill', lot: '9', firing: null, bottles: [], vessel: { ...demijohn, name: '' } }),
  tell({
    what: 'join',
    lot: '9',
    from: [
      { lot: '8', volumeMl: 1 },
      { lot: '8', volumeMl: 1 },
    ],
    vessel: demijohn,
  }),
  tell({ what: 'draw', lot: '8', layer: 'tar', volumeMl: 1, lossMl: 0 }),
  tell({ what: 'layers', lot: '8', lightOilMl: 0, vinegarMl: 9000, tarMl: 0 }),
  tell({ what: 'check', lot: '8', norm: 'council', values: { ph: 15, density: { gPerMl: 1011, atC: 99 } } }),
  sprayerCard({ ...lot, filled: '2027-01-01' }, spray, today, null),
  sprayerCard({ ...lot, stage: 'crude' }, spray, today, '2027-01-12'),
  sprayerCard({ ...lot, lastCheck: null }, spray, today, null),
  sprayerCard({ ...lot, treatedWood: true }, spray, today, null),
]
const problems: EntryProblem[] = mistakes.flatMap((one) => (one.ok ? [] : one.problems))
const rest = restOf({ filled: '2027-02-01' }, today)
if (rest.state === 'refused') problems.push(rest.problem)
// what the page itself says when the box is silent
problems.push({ code: 'no-answer', field: 'service', params: {} })

describe('every problem as a sentence', () => {
  it('turns each mistake away', () => {
    expect(mistakes.map(({ ok }) => ok)).not.toContain(true)
  })

  it.each([
    ['English', en],
    ['Spanish', es],
  ])('in %s says in whole words what to enter', (_, words) => {
    for (const problem of problems) {
      const sentence = sentenceOf(words, problem)
      expect([problem.code, sentence]).toEqual([problem.code, expect.stringMatching(/^\p{Lu}.*[.]$/u)])
      expect(sentence).not.toMatch(/undefined|NaN|null|\[object/)
    }
  })

  it('in Thai says in Thai what to enter', () => {
    for (const problem of problems) {
      const sentence = sentenceOf(th, problem)
      // Thai has neither capitals nor a full stop; a word left in English would have a run of Latin letters that is no unit
      expect([problem.code, sentence]).toEqual([problem.code, expect.stringMatching(/^\p{Script=Thai}/u)])
      expect(sentence).not.toMatch(/undefined|NaN|null|\[object/)
    }
  })

  it('was seen for every code of the registry', () => {
    const seen = new Set(problems.map(({ code }) => code))
    const unseen = entryProblemCodes.filter((code) => !seen.has(code))
    expect(unseen).toEqual([])
  })
})
