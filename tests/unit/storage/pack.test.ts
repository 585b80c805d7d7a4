import fc from 'fast-check'
import { expect, it } from 'vitest'
import { packEntries, unpackEntries } from '../../../server/storage/sqlite/pack.ts'
import type { JournalEntry } from '../../../server/storage/store.ts'

const text = fc.string({ unit: 'binary', maxLength: 40 })
const entries = fc.array(
  fc.record({
    seq: fc.integer({ min: 0, max: Number.MAX_SAFE_INTEGER }),
    at: fc.double({ noNaN: true }),
    kind: fc.constantFrom('message', 'act', 'config', 'health') as fc.Arbitrary<JournalEntry['kind']>,
    kiln: fc.option(text, { nil: null }),
    topic: text,
    payload: fc.uint8Array({ maxLength: 100 }),
    retained: fc.boolean(),
  }),
)

it('carries entries between threads unchanged', () => {
  fc.assert(
    fc.property(entries, (list) => {
      const back = unpackEntries(packEntries(list)).map((entry) => ({ ...entry, payload: new Uint8Array(entry.payload) }))
      expect(back).toEqual(list)
    }),
  )
})
