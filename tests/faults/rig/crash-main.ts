import { openSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { openStore } from '../../../server/storage/sqlite/opening.ts'
import { packEntries } from '../../../server/storage/sqlite/pack.ts'
import { placesIn } from '../../../server/storage/sqlite/places.ts'
import { Ballast } from '../../../server/storage/sqlite/ballast.ts'
import { Writer } from '../../../server/storage/sqlite/writer.ts'
import { entry } from '../../contract/store.contract.ts'

// The writer alone in one thread, so that a trace of its system calls is in order. Arguments: folder, commits, entries a commit.
// After each commit it writes the greatest number that is acknowledged to the file `acknowledged`.

const [folder = '', commits = '20', size = '5'] = process.argv.slice(2)
const file = join(folder, 'kiln.db')
const { database } = openStore(placesIn(folder), 0)
database.exec('PRAGMA wal_autocheckpoint = 20')
const writer = new Writer(file, database, new Ballast(join(folder, 'ballast'), 0))
const said = openSync(join(folder, 'acknowledged'), 'w')
let seq = 0
for (let commit = 1; commit <= Number(commits); commit++) {
  const entries = Array.from({ length: Number(size) }, () => entry(++seq))
  const [done] = writer.commit([{ op: 'append', id: commit, urgent: false, entries: packEntries(entries) }])
  if (done?.failure) throw new Error(done.failure.message)
  writeSync(said, `${seq}\n`)
}
process.kill(process.pid, 'SIGKILL')
