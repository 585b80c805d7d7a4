import type { Language } from '../../lib/choice/choice.svelte.ts'
import { en, type SetupWords } from '../../words/setup/en.ts'
import { es } from '../../words/setup/es.ts'
import { th } from '../../words/setup/th.ts'

/** Words of the first run in the person's language. */
export function setupWords(language: Language): SetupWords {
  return { en, es, th }[language]
}
