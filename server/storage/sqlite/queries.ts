import type { Database } from './engine.ts'
import type { Query } from './messages.ts'
import { packEntries } from './pack.ts'
import { readJournal } from './tables/journal.ts'
import { readCurve } from './tables/points.ts'
import { readCheckpoints, readDocuments, readFiring, readFirings, readHistory, readOutputs, readQuarantined } from './tables/records.ts'

const pageEntries = 4000

export function answer(database: Database, query: Query): unknown {
  switch (query.query) {
    case 'read':
      return packEntries(readJournal(database, query.after, query.upTo, pageEntries))
    case 'checkpoints':
      return readCheckpoints(database)
    case 'quarantined':
      return readQuarantined(database, query.limit)
    case 'outputs':
      return readOutputs(database, query.firing)
    case 'curve':
      return readCurve(database, query.firing, query.from, query.to, query.buckets)
    case 'firing':
      return readFiring(database, query.id)
    case 'firings':
      return readFirings(database)
    case 'documents':
      return readDocuments(database, query.kind)
    case 'history':
      return readHistory(database, query.kind, query.id)
  }
}
