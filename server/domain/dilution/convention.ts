import type { Ratio } from '../../contract/dilution.ts'
import type { Checked } from '../../contract/entry-problems.ts'
import { accept, outside, problem, refuse } from '../entered/number.ts'

// "1 part in 20 of water" has 21 parts in all; "20-fold" has 20. At 200 they differ by half a per cent, at 5 by a fifth.

export function asParts(ratio: Ratio): number {
  return ratio.convention === 'parts' ? ratio.water : ratio.fold - 1
}

export function asFold(ratio: Ratio): number {
  return ratio.convention === 'fold' ? ratio.fold : ratio.water + 1
}

/** The same mixture said the other way. Twice gives back what was said. */
export function otherWay(ratio: Ratio): Ratio {
  return ratio.convention === 'parts' ? { convention: 'fold', fold: ratio.water + 1 } : { convention: 'parts', water: ratio.fold - 1 }
}

/**
 * A ratio as a person typed it: `1:500`, `1 : 500`, `500x`, `500-fold`, `0.2 %` of the finished mixture. A bare number is refused,
 * because it does not say which way it counts.
 */
export function readRatio(text: string): Checked<Ratio> {
  const parts = /^\s*(\d+(?:[.,]\d+)?)\s*:\s*(\d+(?:[.,]\d+)?)\s*$/.exec(text)
  if (parts !== null) return ofParts(number(parts[1]), number(parts[2]))
  const fold = /^\s*(\d+(?:[.,]\d+)?)\s*(?:x|-?\s*fold|times)\s*$/i.exec(text)
  if (fold !== null) return checkedRatio({ convention: 'fold', fold: number(fold[1]) })
  const share = /^\s*(\d+(?:[.,]\d+)?)\s*%\s*$/.exec(text)
  if (share !== null) return checkedRatio({ convention: 'fold', fold: 100 / number(share[1]) })
  return refuse(problem('wrong-unit', 'ratio', { given: text.slice(0, 20), wanted: '1:500, 500x, 0.2 %' }))
}

function ofParts(vinegar: number, water: number): Checked<Ratio> {
  if (vinegar === 0) return refuse(problem('too-small', 'ratio', { value: 0, low: 1 }))
  if (vinegar > water) return refuse(problem('ratio-reversed', 'ratio', { vinegar, water, wanted: `${String(water)}:${String(vinegar)}` }))
  return checkedRatio({ convention: 'parts', water: water / vinegar })
}

/** Water is always the greater part: from 1 : 1 to 1 : 100 000. */
export function checkedRatio(ratio: Ratio): Checked<Ratio> {
  const value = ratio.convention === 'parts' ? ratio.water : ratio.fold
  const low = ratio.convention === 'parts' ? 1 : 2
  if (Number.isFinite(value) && value > 0 && value < 1) {
    return refuse(problem('ratio-reversed', 'ratio', { vinegar: 1, water: value, wanted: `1:${String(Math.round(1 / value))}` }))
  }
  const wrong = outside('ratio', value, low, 100_000)
  return wrong.length > 0 ? refuse(...wrong) : accept(ratio)
}

function number(text: string | undefined): number {
  return Number((text ?? '').replace(',', '.'))
}
