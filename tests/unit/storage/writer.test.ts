import { copyFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { Ballast } from '../../../server/storage/sqlite/ballast.ts'
import { openDatabase } from '../../../server/storage/sqlite/engine.ts'
import { openStore } from '../../../server/storage/sqlite/opening.ts'
import { placesIn } from '../../../server/storage/sqlite/places.ts'
import { Writer } from '../../../server/storage/sqlite/writer.ts'
import { dataFolder } from '../../contract/data-folder.ts'
import { append, entriesIn, failingOnce, withReader } from '../../faults/rig/failing-commit.ts'

// reliability 2.3: after a failed sync nothing of the connection is believed, whatever the next try says (F7).

it('a connection that failed to sync is closed and never written to again; what it did not store is stored by the next', async () => {
  const { folder, remove } = dataFolder()
  const places = placesIn(folder)
  const { connection, after, closed } = failingOnce(openStore(places, 0).database)
  const writer = new Writer(places.database, connection, new Ballast(join(folder, 'ballast'), 0))
  expect(writer.commit([append(1)])[0]?.failure).toBeUndefined()
  expect(closed()).toBe(true)
  expect(after).toEqual(['ROLLBACK'])
  expect(writer.commit([append(2)])[0]?.failure).toBeUndefined()
  expect(after).toEqual(['ROLLBACK'])
  expect(writer.last().seq).toBe(2)
  writer.close()
  await remove()
})

it('what was stored before the failed sync is written into the file of the database anew, whatever the log says of it', async () => {
  const { folder, places, writer, end } = withReader()
  expect(writer.commit([append(1)])[0]?.failure).toBeUndefined()
  expect(writer.commit([append(2)])[0]?.failure).toBeUndefined()
  // the file alone, as it would stand if the log were lost
  const alone = join(folder, 'alone.db')
  copyFileSync(places.database, alone)
  const copy = openDatabase(alone, 'read')
  expect(entriesIn(copy)).toBe(1)
  copy.close()
  await end()
})
