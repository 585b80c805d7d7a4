import type { EntryProblem } from '../../../../server/contract/entry-problems.ts'
import type { Language } from '../../lib/choice/choice.svelte.ts'
import { en, type RestWords } from '../../words/rest/en.ts'
import { es } from '../../words/rest/es.ts'
import { th } from '../../words/rest/th.ts'

/** Words of the pages for lots, use and plan. */
export function restWords(language: Language): RestWords {
  return { en, es, th }[language]
}

/** One problem as a sentence that says what to enter. */
export function sentenceOf(words: RestWords, problem: EntryProblem): string {
  const { params } = problem
  const clauses = String(params['clauses'] ?? '')
    .split(', ')
    .map((name) => (words.clause as Record<string, string>)[name] ?? name)
    .join(', ')
  return words.problem[problem.code]({ ...params, clauses })
}
