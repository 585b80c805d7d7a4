import { expect, test } from 'vitest'
import { settingsForm, settingsSchema } from '../../../../server/settings/schema.ts'
import { en } from '../../../../web/src/words/en.ts'
import { es } from '../../../../web/src/words/es.ts'
import { th } from '../../../../web/src/words/th.ts'
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
  expect(Object.keys(en.setup.fields).filter((name) => !names.has(name))).toEqual([])
})
