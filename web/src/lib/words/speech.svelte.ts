import type { Choice, Language } from '../choice/choice.svelte.ts'
import { en, type Words } from '../../words/en.ts'
import { Measures } from './measures.ts'

const others: Record<Exclude<Language, 'en'>, () => Promise<Words>> = {
  es: async () => (await import('../../words/es.ts')).es,
  // its letters come with it: nobody else has to load them
  th: async () => (await Promise.all([import('../../words/th.ts'), import('../../look/thai-letters.ts')]))[0].th,
}

/** The words of the chosen language and how it writes numbers. English stands until another language has arrived. */
export class Speech {
  words = $state.raw<Words>(en)
  readonly #choice: Choice

  measures = $derived.by(() => new Measures(this.#choice.now))

  constructor(choice: Choice) {
    this.#choice = choice
  }

  async follow(language: Language): Promise<void> {
    const words = language === 'en' ? en : await others[language]()
    if (this.#choice.now.language === language) this.words = words
  }
}
