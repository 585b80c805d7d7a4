import { describe, expect, test } from 'vitest'
import { importProblemCodes } from '../../../../../server/contract/imports.ts'
import { problems } from '../../../../../server/contract/routes.ts'
import { alarmCodes, refusalReasons } from '../../../../../server/contract/vocabulary.ts'
import { languages } from '../../../../../web/src/lib/choice/choice.svelte.ts'
import { manualWords } from '../../../../../web/src/views/manual/manual-words.ts'
import { shelfWords } from '../../../../../web/src/views/shelf/shelf-words.ts'
import { en } from '../../../../../web/src/words/en.ts'
import { es } from '../../../../../web/src/words/es.ts'
import { th } from '../../../../../web/src/words/th.ts'

const pages = { en, es, th }

// both ways: no code of a registry without its page in the manual, and no page of a code that no registry has
describe.each(languages)('the manual in %s', (language) => {
  const manual = manualWords(language)
  test('has cause and remedy of every problem of the service, and of no other', () => {
    expect(Object.keys(manual.problems).sort()).toEqual([...Object.keys(problems), 'unreachable'].sort())
    expect(Object.keys(pages[language].problems).sort()).toEqual(Object.keys(manual.problems).sort())
  })
  test('has cause and remedy of every refusal of a reading, and of no other', () => {
    expect(Object.keys(manual.refusals).sort()).toEqual([...refusalReasons].sort())
  })
  test('has every alarm and every problem of a file, and no other', () => {
    expect(Object.keys(pages[language].alarms).sort()).toEqual([...alarmCodes].sort())
    expect(Object.keys(shelfWords(language).importProblems).sort()).toEqual([...importProblemCodes].sort())
  })
  test('says in whole sentences why and what to do', () => {
    for (const [code, { cause, remedy }] of Object.entries({ ...manual.problems, ...manual.refusals })) {
      // Thai ends no sentence with a stop
      const sentence = language === 'th' ? /^.*[ก-๙].*$/u : /^\p{L}.{8,}\.$/u
      expect(cause, code).toMatch(sentence)
      expect(remedy, code).toMatch(sentence)
      expect(remedy, code).not.toBe(cause)
    }
  })
  test('never says that anything is safe, names no hour of opening, keeps its cautions and steps', () => {
    // the-job.md: never "safe", never an hour at which to open
    const all = JSON.stringify(manual)
    expect(all).not.toMatch(/\bsafe(ly)?\b|\bsegur[oa]s?\b|ปลอดภัย/i)
    expect(manual.cautions).toHaveLength(manualWords('en').cautions.length)
    expect(manual.howTo.map((page) => page.steps.length)).toEqual(manualWords('en').howTo.map((page) => page.steps.length))
  })
})
