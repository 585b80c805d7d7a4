import { openDatabase, type Database } from '../../../server/storage/sqlite/engine.ts'
import { migrate } from '../../../server/storage/sqlite/migrate.ts'
import { migrations } from '../../../server/storage/sqlite/migrations/all.ts'

// Migrates a file and kills itself after so many statements. Arguments: file, statements, further migrations as JSON. Says `whole` at its end.

const [file = '', killAfter = '0', more = '[]'] = process.argv.slice(2)
const database = openDatabase(file, 'write')
let done = 0
const counting: Database = {
  prepare: (sql) => database.prepare(sql),
  close: () => database.close(),
  get isTransaction() {
    return database.isTransaction
  },
  exec(sql) {
    for (const statement of sql.split(';').filter((text) => text.trim() !== '')) {
      database.exec(statement)
      if (++done === Number(killAfter)) process.kill(process.pid, 'SIGKILL')
    }
  },
}
migrate(counting, [...migrations, ...(JSON.parse(more) as string[])])
database.close()
process.stdout.write('whole')
