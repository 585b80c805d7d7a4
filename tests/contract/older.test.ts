import { join } from 'node:path'
import { afterEach, expect, it } from 'vitest'
import { openDatabase } from '../../server/storage/sqlite/engine.ts'
import { migrate } from '../../server/storage/sqlite/migrate.ts'
import { migrations } from '../../server/storage/sqlite/migrations/all.ts'
import { summed } from '../../server/storage/sqlite/tables/summed.ts'
import { dataFolder, sqliteIn } from './data-folder.ts'
import { firing } from './store.contract.ts'

const { folder, remove } = dataFolder()
afterEach(remove)

it('puts the firings of an older program on the shelf, and backs its file up before', async () => {
  const older = openDatabase(join(folder, 'kiln.db'), 'write')
  migrate(older, migrations.slice(0, 1))
  const { intake, ...record } = firing('a', { title: 'Olive' })
  const values = summed([record.id, record.kiln, record.startedAt, JSON.stringify(record), intake])
  older.prepare('INSERT INTO firing (id, kiln, started_at, json, intake, sum) VALUES (?, ?, ?, ?, ?, ?)').run(...values)
  older.close()

  const store = sqliteIn(folder)
  await store.start()
  expect((await store.firings()).map(({ id, title }) => [id, title])).toEqual([['a', 'Olive']])
  await store.stop()
})
