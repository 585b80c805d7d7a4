import type { Language } from '../../lib/choice/choice.svelte.ts'
import { en, type ShelfWords } from '../../words/shelf/en.ts'
import { es } from '../../words/shelf/es.ts'
import { th } from '../../words/shelf/th.ts'

export function shelfWords(language: Language): ShelfWords {
  return { en, es, th }[language]
}
