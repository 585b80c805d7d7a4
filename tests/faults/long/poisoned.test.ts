import { expect, it } from 'vitest'
import { append, entriesIn, withReader } from '../rig/failing-commit.ts'

// Waits twice as long as SQLite waits for a lock.
it('F7 while somebody reads what the log holds, it is not believed: refused as busy, and stored once the log could be copied', async () => {
  const { writer, reader, end } = withReader()
  expect(writer.commit([append(1)])[0]?.failure).toBeUndefined()
  reader.exec('BEGIN')
  expect(entriesIn(reader)).toBe(1)
  expect(writer.commit([append(2)])[0]?.failure?.code).toBe('busy')
  expect(writer.commit([append(2)])[0]?.failure?.code).toBe('busy')
  reader.exec('COMMIT')
  expect(writer.commit([append(2)])[0]?.failure).toBeUndefined()
  expect(entriesIn(reader)).toBe(2)
  await end()
})
