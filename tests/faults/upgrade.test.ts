import { spawnSync } from 'node:child_process'
import { copyFileSync, existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { gunzipSync } from 'node:zlib'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { openDatabase } from '../../server/storage/sqlite/engine.ts'
import { schemaVersion } from '../../server/storage/sqlite/migrate.ts'
import { migrations } from '../../server/storage/sqlite/migrations/all.ts'
import { restoreBackup } from '../../server/storage/sqlite/restore.ts'
import { builtProgram } from '../contract/built.ts'
import { dataFolder, sqliteIn } from '../contract/data-folder.ts'
import { entry, readAll } from '../contract/store.contract.ts'
import { bundleRig } from './rig/programs.ts'

// Upgrade and restore (reliability, 10): F31 and F32 of the handbook's table of faults.

const cleanups: (() => Promise<void>)[] = []
const folderOf = () => {
  const { folder, remove } = dataFolder()
  cleanups.push(remove)
  return folder
}
let rig = ''
beforeAll(async () => {
  rig = await bundleRig('migrate')
})
afterAll(() => rmSync(dirname(rig), { recursive: true }))
afterEach(async () => {
  for (const cleanup of cleanups.splice(0)) await cleanup()
})

const entries = (count: number) => Array.from({ length: count }, (_, index) => entry(index + 1))
async function filled(folder: string, count: number, backup = false): Promise<string> {
  const store = sqliteIn(folder)
  await store.start()
  await store.append(entries(count))
  const file = backup ? await store.backup() : ''
  await store.stop()
  return file
}
async function seqsIn(folder: string): Promise<number[]> {
  const store = sqliteIn(folder)
  await store.start()
  const seqs = (await readAll(store)).map(({ seq }) => seq)
  await store.stop()
  return seqs
}
const keptBy = 'tests/contract/kept'

describe('upgrade (F31)', () => {
  it.each(readdirSync(keptBy).filter((name) => name.endsWith('.db.gz')))(
    'opens %s, a database of a released schema, with all that is in it (F31)',
    async (name) => {
      const folder = folderOf()
      writeFileSync(join(folder, 'kiln.db'), gunzipSync(readFileSync(join(keptBy, name))))
      const store = sqliteIn(folder)
      const { opening, lastSeq } = await store.start()
      expect(opening.setAside).toBeNull()
      expect(lastSeq).toBe(40)
      expect((await readAll(store)).map((each) => ({ ...each, payload: [...each.payload] }))).toEqual(
        entries(40).map((each) => ({ ...each, payload: [...each.payload] })),
      )
      expect(await store.documents('lot')).toMatchObject([{ id: 'L1', revision: 2, json: '{"litres":2}' }])
      await store.append([entry(41)])
      await store.stop()
    },
  )

  it('every released schema has a database that is kept for this test (F31)', () => {
    expect(
      readdirSync(keptBy)
        .filter((name) => name.endsWith('.db.gz'))
        .sort(),
    ).toEqual(migrations.map((_, index) => `schema-${index + 1}.db.gz`))
  })

  it('killed after each statement of each migration: old or new schema, never between, and the next start completes it (F31)', async () => {
    const more = ['CREATE TABLE extra (n INTEGER); INSERT INTO extra SELECT seq FROM journal; CREATE INDEX extra_n ON extra (n)']
    const migrated = (file: string, killAfter: number) =>
      spawnSync(process.execPath, [rig, file, String(killAfter), JSON.stringify(more)], { encoding: 'utf8' })
    const folder = folderOf()
    await filled(folder, 30)
    const old = join(folder, 'kiln.db')
    let points = 0
    for (const from of ['nothing', 'the newest']) {
      for (let kill = 1; ; kill++) {
        const file = join(folder, `${from}-${kill}.db`)
        if (from === 'the newest') copyFileSync(old, file)
        const run = migrated(file, kill)
        if (run.stdout === 'whole') break
        expect(run.signal).toBe('SIGKILL')
        points++
        const database = openDatabase(file, 'write')
        const version = schemaVersion(database)
        const tables = database
          .prepare("SELECT name FROM sqlite_schema WHERE type = 'table'")
          .all()
          .map((row) => String(row['name']))
        expect(tables.includes('journal')).toBe(version >= 1)
        expect(tables.includes('extra')).toBe(version === migrations.length + 1)
        database.close()
        expect(migrated(file, 0).stdout).toBe('whole')
        const after = openDatabase(file, 'write')
        expect(schemaVersion(after)).toBe(migrations.length + 1)
        const count = (table: string) => Number(after.prepare(`SELECT count(*) AS n FROM ${table}`).get()?.['n'])
        expect([count('journal'), count('extra')]).toEqual(from === 'nothing' ? [0, 0] : [30, 30])
        after.close()
      }
    }
    console.info(`migrations: ${points} kills, one after each statement`)
    expect(points).toBeGreaterThan(15)
  })
})

describe('restore (F32)', () => {
  it('puts a backup in its place, sets aside what stood there, and leaves no log behind (F32)', async () => {
    const folder = folderOf()
    const backup = await filled(folder, 10, true)
    const store = sqliteIn(folder)
    await store.start()
    await store.append([entry(11)])
    await store.stop()
    const aside = restoreBackup(backup, folder, Date.UTC(2026, 1, 1))
    expect(await seqsIn(folder)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])
    const before = openDatabase(join(aside ?? '', 'kiln.db'), 'read')
    expect(before.prepare('SELECT max(seq) AS seq FROM journal').get()?.['seq']).toBe(11)
    before.close()
  }, 600_000)

  it('refuses a spoilt, a foreign and a newer one, and while the service runs; the data stay as they are (F32)', async () => {
    const folder = folderOf()
    const backup = await filled(folder, 10, true)
    const spoilt = join(folder, 'spoilt.db')
    const bytes = readFileSync(backup)
    bytes[bytes.length >> 1] = (bytes[bytes.length >> 1] ?? 0) ^ 4
    writeFileSync(spoilt, bytes)
    copyFileSync(`${backup}.json`, `${spoilt}.json`)
    const cut = join(folder, 'cut.db')
    writeFileSync(cut, readFileSync(backup).subarray(0, 20_000))
    const foreign = join(folder, 'foreign.db')
    const other = openDatabase(foreign, 'write')
    other.exec('CREATE TABLE x (n INTEGER)')
    other.close()
    const text = join(folder, 'text.db')
    writeFileSync(text, 'this is no database at all, only some words')
    const newer = join(folder, 'newer.db')
    copyFileSync(backup, newer)
    const later = openDatabase(newer, 'write')
    later.exec(`PRAGMA user_version = ${migrations.length + 1}`)
    later.exec('PRAGMA wal_checkpoint(TRUNCATE)')
    later.close()
    const files = () => readdirSync(folder).filter((name) => name.startsWith('kiln.db') || name === 'set-aside')
    const before = { names: files(), bytes: readFileSync(join(folder, 'kiln.db')) }
    for (const file of [spoilt, cut, foreign, text, newer, join(folder, 'none.db')]) {
      expect(() => restoreBackup(file, folder, 0), file).toThrow()
      expect(files()).toEqual(before.names)
      expect(readFileSync(join(folder, 'kiln.db')).equals(before.bytes)).toBe(true)
    }
    const store = sqliteIn(folder)
    await store.start()
    expect(() => restoreBackup(backup, folder, 0)).toThrow(/another instance/)
    await store.stop()
    expect(await seqsIn(folder)).toHaveLength(10)
  })

  it('the program restores by a flag and says what it did (F32)', async () => {
    const folder = folderOf()
    const backup = await filled(folder, 5, true)
    const run = (file: string) =>
      spawnSync(process.execPath, [builtProgram('main'), '--data', folder, '--restore', file], { encoding: 'utf8' })
    const fine = run(backup)
    expect([fine.status, fine.stderr]).toEqual([0, ''])
    expect(fine.stdout).toContain('set-aside')
    const wrong = run(join(folder, 'none.db'))
    expect(wrong.status).toBe(6)
    expect(wrong.stderr).toMatch(/^Nothing was changed/)
    expect(existsSync(join(folder, 'kiln.db'))).toBe(true)
  })
})
