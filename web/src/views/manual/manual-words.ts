import type { Language } from '../../lib/choice/choice.svelte.ts'
import { en, type ManualWords } from '../../words/manual/en.ts'
import { es } from '../../words/manual/es.ts'
import { th } from '../../words/manual/th.ts'

export function manualWords(language: Language): ManualWords {
  return { en, es, th }[language]
}
