import type { Database } from './engine.ts'
import type { Query } from './messages.ts'
import { packEntries } from './pack.ts'
import { readJournal } from './tables/journal.ts'
import { readDrawn } from './tables/drawn.ts'
import { readFiring, readShelf } from './tables/firings.ts'
import { readCurve } from './tables/points.ts'
import { readCheckpoints, readDocuments, readHistory, readOutputs, readQuarantined } from './tables/records.ts'

const pageEntries = 200

export function answer(database: Database, query: Query): unknown {
  switch (query.query) {
    case 'read':
      return packEntries(readJournal(database, query.after, query.upTo, pageEntries))
    case 'checkpoints':
      return readCheckpoints(database)
    case 'quarantined':
      return readQuarantined(database, query.limit)
    case 'outputs':
      return readOutputs(database, query.firing, query.kinds)
    case 'curve':
      return readCurve(database, query.firing, query.from, query.to, query.buckets)
    case 'whole-curve':
      return readDrawn(database, query.firing, query.from, query.to)
    case 'firing':
      return readFiring(database, query.id)
    case 'shelf':
      return readShelf(database, query.most)
    case 'documents':
      return readDocuments(database, query.kind)
    case 'history':
      return readHistory(database, query.kind, query.id)
  }
}
