import { join } from 'node:path'
import { Ballast } from '../../../server/storage/sqlite/ballast.ts'
import { openDatabase, type Database } from '../../../server/storage/sqlite/engine.ts'
import { openStore } from '../../../server/storage/sqlite/opening.ts'
import { packEntries } from '../../../server/storage/sqlite/pack.ts'
import { placesIn } from '../../../server/storage/sqlite/places.ts'
import { Writer } from '../../../server/storage/sqlite/writer.ts'
import { dataFolder } from '../../contract/data-folder.ts'
import { entry } from '../../contract/store.contract.ts'

/** A connection whose n-th COMMIT reports an I/O error; remembers what was asked of it afterwards. */
export function failingOnce(database: Database, nth = 1): { connection: Database; after: string[]; closed: () => boolean } {
  const after: string[] = []
  let commits = 0
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
      if (sql === 'COMMIT' && ++commits === nth) {
        failed = true
        throw Object.assign(new Error('disk I/O error'), { code: 'ERR_SQLITE_ERROR', errcode: 10 })
      }
      database.exec(sql)
    },
  }
  return { connection, after, closed: () => closed }
}

/** A store whose second COMMIT fails, with a reader of its own, as the service has one: the last connection to go would copy the log itself. */
export function withReader() {
  const { folder, remove } = dataFolder()
  const places = placesIn(folder)
  const { connection } = failingOnce(openStore(places, 0).database, 2)
  const writer = new Writer(places.database, connection, new Ballast(join(folder, 'ballast'), 0))
  const reader = openDatabase(places.database, 'read')
  const end = async () => {
    reader.close()
    writer.close()
    await remove()
  }
  return { folder, places, writer, reader, end }
}
export const entriesIn = (database: Database): number => Number(database.prepare('SELECT max(seq) AS seq FROM journal').get()?.['seq'] ?? 0)

export const append = (id: number) => ({ op: 'append' as const, id, urgent: false, entries: packEntries([entry(id)]) })
