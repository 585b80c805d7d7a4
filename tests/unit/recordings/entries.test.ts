import { describe, expect, test } from 'vitest'
import { defaultKilnConfig } from '../../../server/contract/kiln-defaults.ts'
import { entryOf, lineOf } from '../../../server/recordings/entries.ts'
import { samePayload } from '../../../server/recordings/payload.ts'
import { messageEntry } from '../../../server/runtime/entry.ts'

const bytes = (text: string) => new TextEncoder().encode(text)
const at = Date.UTC(2026, 2, 1, 7, 30, 5, 123)

describe('lines and journal entries', () => {
  test.each([
    { at: new Date(at).toISOString(), topic: 'firing/1/yard/n1/readings', payload: [{ n: 'wall', v: 20.5 }], retained: true },
    { at: new Date(at).toISOString(), topic: 'firing/1/yard/n1/readings', bytes: 'AP8=', retained: false },
    {
      at: new Date(at).toISOString(),
      id: 'a',
      doneAt: '2026-03-01T07:00:00.000Z',
      corrects: 'b',
      action: 'swap-bottle',
      litres: 2,
    } as const,
    { at: new Date(at).toISOString(), config: defaultKilnConfig() },
    { at: new Date(at).toISOString(), health: 'storage-failing', on: true } as const,
  ])('go there and back without a change', (line) => {
    expect(lineOf(entryOf(line, { seq: 7, at, kiln: 'kiln-1' }))).toEqual(line)
  })

  test('an act cannot have been done after it was entered', () => {
    const line = { at: new Date(at).toISOString(), doneAt: new Date(at + 60_000).toISOString(), action: 'light' } as const
    expect(lineOf(entryOf(line, { seq: 1, at, kiln: 'k' }))).toMatchObject({ doneAt: new Date(at).toISOString(), id: 'line-1' })
  })

  test.each(['[{"n":"a","v":1.50}]', ' {"a" : 1e2}\n', '{"a":"\\u00e9 x"}', '[]', '-0', '"text"'])('keep %s as JSON', (text) => {
    expect(samePayload(bytes(text))).toEqual(JSON.parse(text))
  })

  // reliability 5, classes 5 to 9: what JSON.parse would hide must reach the fold again as it came
  test.each(['{"a":1,"a":2}', '[1e999]', '{"2":1,"1":2}', 'nonsense', '\ufeff[]', ''])('keep %s as bytes', (text) => {
    expect(samePayload(bytes(text))).toBeUndefined()
    const entry = messageEntry({ seq: 1, at }, { topic: 't', payload: bytes(text), retained: false })
    const back = entryOf(lineOf(entry), { seq: 1, at, kiln: 'k' })
    expect(back.payload).toEqual(entry.payload)
  })
})
