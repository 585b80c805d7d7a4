import type { Language } from '../../../lib/choice/choice.svelte.ts'
import { en, type HouseWords } from '../../../words/house/en.ts'
import { es } from '../../../words/house/es.ts'
import { th } from '../../../words/house/th.ts'

/** Words for whoever looks after the box, in the person's language. */
export function houseWords(language: Language): HouseWords {
  return { en, es, th }[language]
}
