import { expect, test } from 'vitest'
import { en } from '../../../../web/src/words/en.ts'
import { es } from '../../../../web/src/words/es.ts'
import { th } from '../../../../web/src/words/th.ts'

/** Every sentence of a language by its key; functions are called with marks that are found again. */
function all(words: unknown, path = ''): [string, string][] {
  if (typeof words === 'string') return [[path, words]]
  if (typeof words === 'function')
    return path.startsWith('.reasons') ? [] : [[path, String((words as (...a: string[]) => unknown)('⟨1⟩', '⟨2⟩', '⟨3⟩'))]]
  if (typeof words !== 'object' || words === null) return []
  return Object.entries(words).flatMap(([key, value]) => all(value, `${path}.${key}`))
}

const languages = { en, es, th }
/** Words that are the same in both: names, signs and what is written alike everywhere. */
const alike =
  /^\.(name|madeBy|units|age|when|readings\.(ages|plusMinus)|panel\.(logged|no)|arm\.no|setup\.mass|shortRoles\.co|demo\.times|strip\.plan)/

test.each(Object.entries(languages))('%s never says that anything is safe', (_name, words) => {
  // the-job.md: never says "safe"; a person acts on what is measured, not on a promise
  for (const [key, text] of all(words)) expect(text, key).not.toMatch(/\bsafe(ly)?\b|\bsegur[oa]s?\b|ปลอดภัย/i)
})

test.each(Object.entries(languages))('%s never tells to lean in, taste, light the smoke, or pour water in', (_name, words) => {
  for (const [key, text] of all(words)) expect(text, key).not.toMatch(/lean in\b|taste|light the smoke|pour water/i)
})

test('a forecast keeps both ends of its range in every language, and opening gives no time at all', () => {
  for (const words of Object.values(languages)) {
    for (const call of ['stop-feeding', 'start-collecting', 'stop-collecting', 'seal'] as const)
      expect(words.until[call]('10:10', '10:50')).toMatch(/10:10.*10:50/)
    expect(words.until.open('10:10', '10:50')).not.toMatch(/10:/)
  }
})

test('Spanish leaves nothing in English', () => {
  const english = new Map(all(en))
  const same = all(es).filter(([key, text]) => english.get(key) === text && !alike.test(key) && /[a-z]{3}/i.test(text))
  expect(same).toEqual([])
})

test('Thai is written in Thai, and says that a machine made it', () => {
  const foreign = all(th).filter(
    ([key, text]) => !alike.test(key) && /[a-z]{3}/i.test(text.replace(/⟨\d⟩|ppm|Wi-Fi|CO\b/g, '')) && !/[ก-๙]/.test(text),
  )
  expect(foreign).toEqual([])
  expect(th.madeBy).toBe('machine')
  expect(th.machineMade).toMatch(/[ก-๙]/)
})
