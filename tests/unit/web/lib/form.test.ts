import { expect, test } from 'vitest'
import { settingsForm, settingsSchema } from '../../../../server/settings/schema.ts'
import { en } from '../../../../web/src/words/en.ts'
import { es } from '../../../../web/src/words/es.ts'
import { th } from '../../../../web/src/words/th.ts'
import { es as whyEs } from '../../../../web/src/words/setup/why/es.ts'
import { th as whyTh } from '../../../../web/src/words/setup/why/th.ts'
import { nameOfPath, optionText } from '../../../../web/src/views/setup/field-words.ts'
import { en as setupEn } from '../../../../web/src/words/setup/en.ts'
import { es as setupEs } from '../../../../web/src/words/setup/es.ts'
import { th as setupTh } from '../../../../web/src/words/setup/th.ts'
import { fieldsOf, parsed, withValue, type FormSchema } from '../../../../web/src/views/setup/form.ts'

const form = settingsForm() as FormSchema

test('the form is drawn from the schema of the settings: every plain field, with what it is for', () => {
  const fields = fieldsOf(form, settingsSchema.parse({}))
  const names = fields.map((field) => field.path.join('.'))
  expect(names).toEqual(expect.arrayContaining(['port', 'kilns.0.name', 'kilns.0.way', 'kilns.0.limits.smokeStartC']))
  for (const field of fields) expect(field.schema.description, field.path.join('.')).toBeTruthy()
})

test('one changed value leaves the rest as it was, and the schema takes it', () => {
  const before = settingsSchema.parse({})
  const after = settingsSchema.parse(withValue(before, ['kilns', 0, 'limits', 'smokeStopC'], 140))
  expect(after.kilns[0]?.limits.smokeStopC).toBe(140)
  expect({ ...after, kilns: [] }).toEqual({ ...before, kilns: [] })
})

test('typed text becomes what the schema wants', () => {
  expect(parsed({ type: 'number' }, '1,5')).toBe(1.5)
  expect(parsed({ type: 'integer' }, 'x')).toBeUndefined()
  expect(parsed({ type: 'boolean' }, 'true')).toBe(true)
})

test('every field that is shown has a name in every language', () => {
  const names = new Set(fieldsOf(form, settingsSchema.parse({})).map((field) => String(field.path.at(-1))))
  for (const words of [en, es, th]) expect([...names].filter((name) => !(name in words.setup.fields))).toEqual([])
  for (const why of [whyEs, whyTh]) expect(Object.keys(why).sort()).toEqual([...names].sort())
  expect(Object.keys(en.setup.fields).filter((name) => !names.has(name))).toEqual([])
})

test('no choice of a list and no name is left as it stands in the file', () => {
  const fields = fieldsOf(form, settingsSchema.parse({}))
  for (const [words, setup] of [
    [en, setupEn],
    [es, setupEs],
    [th, setupTh],
  ] as const) {
    for (const field of fields) {
      expect(nameOfPath(field.path.join('.'), words)).not.toContain('.')
      const options = field.schema.enum ?? (field.schema.type === 'boolean' ? ['true', 'false'] : [])
      const texts = options.map((option) => optionText(field, option, setup))
      expect(new Set(texts).size).toBe(options.length)
      for (const text of texts) if (words === th) expect(text).toMatch(/[ก-๙]/)
    }
  }
  expect(nameOfPath('kilns.1.limits.fireOutC', en)).toBe('Firebox: out below (2)')
})
