import { expect, test } from 'vitest'
import { en as houseEn } from '../../../../web/src/words/house/en.ts'
import { es as houseEs } from '../../../../web/src/words/house/es.ts'
import { th as houseTh } from '../../../../web/src/words/house/th.ts'
import { en as setupEn } from '../../../../web/src/words/setup/en.ts'
import { es as setupEs } from '../../../../web/src/words/setup/es.ts'
import { th as setupTh } from '../../../../web/src/words/setup/th.ts'

const en = { ...setupEn, house: houseEn }
const es = { ...setupEs, house: houseEs }
const th = { ...setupTh, house: houseTh }

/** Every sentence by its key; functions are called with marks that are found again. */
function all(words: unknown, path = ''): [string, string][] {
  if (typeof words === 'string') return [[path, words]]
  if (typeof words === 'function') return [[path, String((words as (...a: unknown[]) => unknown)('⟨1⟩', '⟨2⟩', '⟨3⟩', '⟨4⟩'))]]
  return Object.entries(words as object).flatMap(([key, value]) => all(value, `${path}.${key}`))
}
const languages = { en, es, th }
const marks = (text: string) => [...new Set(text.match(/⟨\d⟩/g))].sort()
/** Written alike everywhere, or a plural that one language has not. */
const alike = /^\.(clock\.heightUnit|changes\.entry|rehearsal\.no|clock\.no|form\.yesNo\.false|house\.nodes\.no|house\.refused\.line)$/

test.each(Object.entries(languages))('%s never says that anything is safe, and tells nothing dangerous', (_name, words) => {
  for (const [key, text] of all(words)) {
    expect(text, key).not.toMatch(/\bsafe(ly)?\b|\bsegur[oa]s?\b|ปลอดภัย/i)
    expect(text, key).not.toMatch(/lean in\b|taste|light the smoke|pour water/i)
  }
})

test('every language fills in the same places', () => {
  const english = new Map(all(en))
  for (const words of [es, th]) for (const [key, text] of all(words)) expect(marks(text), key).toEqual(marks(english.get(key) ?? ''))
})

test('Spanish leaves nothing in English, Thai is written in Thai', () => {
  const english = new Map(all(en))
  expect(all(es).filter(([key, text]) => english.get(key) === text && !alike.test(key))).toEqual([])
  expect(all(th).filter(([key, text]) => !alike.test(key) && !/[ก-๙]/.test(text))).toEqual([])
})
