import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, expect, it } from 'vitest'
import { openDatabase } from '../../../server/storage/sqlite/engine.ts'
import { migrate, schemaVersion } from '../../../server/storage/sqlite/migrate.ts'
import { migrations } from '../../../server/storage/sqlite/migrations/all.ts'
import { dataFolder } from '../../contract/data-folder.ts'

const { folder, remove } = dataFolder()
afterEach(remove)

it('takes each step whole or not at all, and only once', () => {
  expect(existsSync(folder)).toBe(true)
  const database = openDatabase(join(folder, 'a.db'), 'write')
  const broken = [...migrations, 'CREATE TABLE extra (n INTEGER); CREATE TABLE nonsense ((']
  expect(() => migrate(database, broken)).toThrow()
  expect(schemaVersion(database)).toBe(migrations.length)
  expect(database.prepare("SELECT count(*) AS n FROM sqlite_schema WHERE name = 'extra'").get()?.['n']).toBe(0)
  migrate(database, [...migrations, 'CREATE TABLE extra (n INTEGER)'])
  migrate(database, [...migrations, 'CREATE TABLE extra (n INTEGER)'])
  expect(schemaVersion(database)).toBe(migrations.length + 1)
  expect(() => migrate(database)).toThrow(/newer program/)
  database.close()
})
