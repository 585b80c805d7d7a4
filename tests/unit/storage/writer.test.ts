import { join } from 'node:path'
import { expect, it } from 'vitest'
import { Ballast } from '../../../server/storage/sqlite/ballast.ts'
import type { Database } from '../../../server/storage/sqlite/engine.ts'
import { openStore } from '../../../server/storage/sqlite/opening.ts'
import { packEntries } from '../../../server/storage/sqlite/pack.ts'
import { placesIn } from '../../../server/storage/sqlite/places.ts'
import { Writer } from '../../../server/storage/sqlite/writer.ts'
import { dataFolder } from '../../contract/data-folder.ts'
import { entry } from '../../contract/store.contract.ts'

// reliability 2.3: after a failed sync nothing of the connection is believed, whatever the next try says (F7).

/** A connection whose first COMMIT reports an I/O error; remembers what was asked of it afterwards. */
function failingOnce(database: Database): { connection: Database; after: string[]; closed: () => boolean } {
  const after: string[] = []
  let failed = false
  let closed = false
  const connection: Database = {
    get isTransaction() {
      return database.isTransaction
    },
    prepare: (sql) => database.prepare(sql),
    close() {
      closed = true
      database.close()
    },
    exec(sql) {
      if (failed) after.push(sql)
      if (sql === 'COMMIT' && !failed) {
        failed = true
        throw Object.assign(new Error('disk I/O error'), { code: 'ERR_SQLITE_ERROR', errcode: 10 })
      }
      database.exec(sql)
    },
  }
  return { connection, after, closed: () => closed }
}

it('a connection that failed to sync is closed and never written to again; what it did not store is stored by the next', async () => {
  const { folder, remove } = dataFolder()
  const places = placesIn(folder)
  const { connection, after, closed } = failingOnce(openStore(places, 0).database)
  const writer = new Writer(places.database, connection, new Ballast(join(folder, 'ballast'), 0))
  const append = (id: number) => ({ op: 'append' as const, id, urgent: false, entries: packEntries([entry(id)]) })
  expect(writer.commit([append(1)])[0]?.failure).toBeUndefined()
  expect(closed()).toBe(true)
  expect(after).toEqual(['ROLLBACK'])
  expect(writer.commit([append(2)])[0]?.failure).toBeUndefined()
  expect(after).toEqual(['ROLLBACK'])
  expect(writer.last().seq).toBe(2)
  writer.close()
  await remove()
})
