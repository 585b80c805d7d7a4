import { Measures } from '../../../web/src/lib/words/measures.ts'
import { en as pageEn } from '../../../web/src/words/en.ts'
import type { Words } from '../../../web/src/words/en.ts'
import { es as pageEs } from '../../../web/src/words/es.ts'
import { th as pageTh } from '../../../web/src/words/th.ts'
import { en as setupEn } from '../../../web/src/words/setup/en.ts'
import type { SetupWords } from '../../../web/src/words/setup/en.ts'
import { es as setupEs } from '../../../web/src/words/setup/es.ts'
import { th as setupTh } from '../../../web/src/words/setup/th.ts'
import { en } from './en.ts'
import type { AccountWords } from './en.ts'
import { es } from './es.ts'
import { th } from './th.ts'

/** How the account speaks: reasons, phases, acts and alarms with the words of the page. */
export interface Speech {
  own: AccountWords
  page: Words
  setup: SetupWords
  measures: Measures
}

export const languages = ['en', 'es', 'th'] as const
export type Language = (typeof languages)[number]

export function speechIn(language: Language): Speech {
  return {
    own: { en, es, th }[language],
    page: { en: pageEn, es: pageEs, th: pageTh }[language],
    setup: { en: setupEn, es: setupEs, th: setupTh }[language],
    measures: new Measures({ language, temperature: 'C', volume: 'L', mass: 'kg' }),
  }
}
