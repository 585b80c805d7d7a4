import type { CautionCode, Mixture, Rate, Ratio, Touches, UseId } from '../../contract/dilution.ts'
import type { Checked } from '../../contract/entry-problems.ts'
import { accept, outside, problem, refuse } from '../entered/number.ts'
import { asFold, asParts, checkedRatio } from './convention.ts'
import { rates, touches } from './tables/rates.ts'

/** Stronger kills growing plants; 500-fold or weaker is the rule for crops (Okayama Prefectural Library, citing three books). */
export const strongestOnPlantsFold = 100
export const cautionOnPlantsFold = 500
/** Repeated and stronger, it can wither plants (grower's page). */
const repeatedFold = 1000

export interface Tank {
  ml: number
  /** `water`: so much water, and the vinegar on top of it. `finished`: so much mixture in all. */
  holds: 'water' | 'finished'
}

/** How much vinegar into how much water; refuses what the trade says kills. Any strength short of the limits is the person's own choice. */
export function mix(use: UseId, ratio: Ratio, tank: Tank): Checked<Mixture> {
  const rightRatio = checkedRatio(ratio)
  const wrong = rightRatio.ok ? [] : [...rightRatio.problems]
  if (tank.ml === 0) wrong.push(problem('zero-tank', 'tank', { low: 0.1, high: 100_000, unit: 'L' }))
  else wrong.push(...outside('tank', tank.ml, 100, 100_000_000, 'mL'))
  if (touches[use] === 'animals') wrong.push(problem('not-for-feed', 'use'))
  const parts = asParts(ratio)
  const fold = asFold(ratio)
  // as written by either convention: "1 : 100" is 101-fold and passes, "100-fold" passes, "1 : 99" is 100-fold and passes
  if (touches[use] === 'living-plants' && fold < strongestOnPlantsFold) {
    wrong.push(problem('too-strong-for-plants', 'ratio', { fold, parts, strongest: strongestOnPlantsFold }))
  }
  if (wrong.length > 0) return refuse(...wrong)
  const vinegarMl = tank.holds === 'water' ? tank.ml / parts : tank.ml / fold
  const waterMl = tank.holds === 'water' ? tank.ml : tank.ml - vinegarMl
  return accept({
    use,
    touches: touches[use],
    parts,
    fold,
    vinegarMl,
    waterMl,
    totalMl: vinegarMl + waterMl,
    cautions: cautionsFor(touches[use], fold),
    rates: rates.filter((rate) => rate.use === use && rate.offered && holds(rate, fold)),
  })
}

/** Whether a published rate names this strength; half a per cent lets 1 : 500 stand for 500-fold. */
function holds(rate: Rate, fold: number): boolean {
  const shift = rate.convention === 'parts' ? 1 : 0
  return fold >= (rate.from + shift) * 0.995 && fold <= (rate.to + shift) * 1.005
}

/** What goes on the page and the card, first what matters most (maker's and FFTC advice; Epagri; Okayama library). */
export function cautionsFor(where: Touches, fold: number): CautionCode[] {
  const codes: CautionCode[] = []
  if (where === 'living-plants') {
    if (fold < cautionOnPlantsFold) codes.push('stronger-than-500')
    codes.push('test-patch')
    if (fold < repeatedFold) codes.push('repeated-stronger-than-1000')
    codes.push('five-days-between')
  }
  if (where === 'bare-soil') codes.push('wait-before-planting')
  codes.push('gloves-goggles', 'mask', 'not-with-alkalis', 'away-from-fish', 'no-claim', 'local-law')
  return codes
}
