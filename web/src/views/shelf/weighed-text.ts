import type { Measures } from '../../lib/words/measures.ts'
import type { ShelfWords } from '../../words/shelf/en.ts'
import type { Weighed } from './result.ts'

/** Later figures in one line; only what was given. */
export function weighedText(weighed: Weighed, words: ShelfWords, measures: Measures): string {
  const { massKg, moisturePct, charcoalKg, finesKg, crudeL } = weighed
  const kilograms = (kg: number): string => measures.kilograms(kg)
  return [
    massKg === undefined ? '' : `${words.result.charge} ${kilograms(massKg)}`,
    moisturePct === undefined ? '' : `${measures.number(moisturePct)} % ${words.result.moisture}`,
    crudeL === undefined ? '' : `${words.result.crude} ${measures.litres(crudeL)}`,
    charcoalKg === undefined ? '' : `${words.result.charcoal} ${kilograms(charcoalKg)}`,
    finesKg === undefined ? '' : words.result.fines(kilograms(finesKg)),
  ]
    .filter((part) => part !== '')
    .join(', ')
}
