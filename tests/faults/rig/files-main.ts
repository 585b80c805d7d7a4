import { mkdirSync, openSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { writeWhole } from '../../../server/settings/file.ts'
import { backUp } from '../../../server/storage/sqlite/backup.ts'
import { Ballast } from '../../../server/storage/sqlite/ballast.ts'
import { openStore } from '../../../server/storage/sqlite/opening.ts'
import { packEntries } from '../../../server/storage/sqlite/pack.ts'
import { placesIn } from '../../../server/storage/sqlite/places.ts'
import { Writer } from '../../../server/storage/sqlite/writer.ts'
import { entry } from '../../contract/store.contract.ts'

// Writes the files of the house beside its database, again and again: settings and verified backups. Arguments: folder, rounds.
// After each round its number stands in the file `acknowledged`.

const [folder = '', rounds = '4'] = process.argv.slice(2)
const places = placesIn(folder)
const { database } = openStore(places, 0)
const writer = new Writer(places.database, database, new Ballast(places.ballast, 0))
mkdirSync(places.backups)
const said = openSync(join(folder, 'acknowledged'), 'w')
for (let round = 1; round <= Number(rounds); round++) {
  writer.commit([{ op: 'append', id: round, urgent: false, entries: packEntries([entry(round)]) }])
  writeWhole(join(folder, 'settings.json'), { round, filling: 'x'.repeat(2000) })
  backUp(places, Date.UTC(2026, 2, 1, round))
  writeSync(said, `${round}\n`)
}
process.kill(process.pid, 'SIGKILL')
