import { createHash } from 'node:crypto'
import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  readSync,
  renameSync,
  rmSync,
  statfsSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { basename, join } from 'node:path'
import { StoreProblem } from '../store.ts'
import { checkAll, tablesOf } from './check.ts'
import { openDatabase } from './engine.ts'
import { schemaVersion } from './migrate.ts'
import { syncPath, type Places } from './places.ts'
import { keptOf } from './retention.ts'

/** Stands beside a backup and is written last: a backup without one was never finished. */
export interface Manifest {
  format: 1
  schema: number
  madeAt: string
  bytes: number
  sha256: string
  rows: Record<string, number>
  lastSeq: number
}

/** Copies the database with VACUUM INTO, checks every row of the copy, and only then gives it its name. @returns its path */
export function backUp(places: Places, nowMs: number): string {
  requireRoom(places)
  mkdirSync(places.backups, { recursive: true })
  const name = `${new Date(nowMs).toISOString().replaceAll(':', '-')}.db`
  const file = join(places.backups, name)
  const part = `${file}.part`
  removeUnfinished(places)
  try {
    const source = openDatabase(places.database, 'read')
    try {
      source.prepare('VACUUM INTO ?').run(part)
    } finally {
      source.close()
    }
    const manifest = verified(part, nowMs)
    syncPath(part)
    renameSync(part, file)
    // not the name that the copy had: whoever syncs it must not depend on the renaming before
    writeFileSync(`${file}.json.part`, JSON.stringify(manifest, null, 2))
    syncPath(`${file}.json.part`)
    renameSync(`${file}.json.part`, `${file}.json`)
    syncPath(places.backups)
  } catch (error) {
    rmSync(part, { force: true })
    throw error
  }
  const all = backupsOf(places)
  const stay = keptOf(all.map((path) => basename(path)))
  for (const old of all) if (!stay.has(basename(old))) for (const path of [`${old}.json`, old]) rmSync(path, { force: true })
  return file
}

/** What a crash left of a backup that was being made or thrown away; never two are made at once. Files of others stay. */
function removeUnfinished(places: Places): void {
  const finished = new Set(backupsOf(places).map((path) => basename(path)))
  for (const name of readdirSync(places.backups)) {
    const ours = /^(\d{4}-\d\d-\d\dT[\d-]+\.\d{3}Z\.db)(|\.json|\.part|\.part-journal|\.json\.part)$/.exec(name)
    if (ours !== null && !(finished.has(ours[1] ?? '') && ['', '.json'].includes(ours[2] ?? ''))) rmSync(join(places.backups, name))
  }
}

function verified(file: string, nowMs: number): Manifest {
  const database = openDatabase(file, 'read')
  try {
    checkAll(database)
    const count = (table: string) => Number(database.prepare(`SELECT count(*) AS n FROM ${table}`).get()?.['n'])
    const rows = Object.fromEntries([...tablesOf(database).map(({ name }) => name), 'point'].map((table) => [table, count(table)]))
    const lastSeq = Number(database.prepare('SELECT coalesce(max(seq), 0) AS seq FROM journal').get()?.['seq'])
    const madeAt = new Date(nowMs).toISOString()
    return { format: 1, schema: schemaVersion(database), madeAt, bytes: statSync(file).size, sha256: hashOf(file), rows, lastSeq }
  } finally {
    database.close()
  }
}

export function hashOf(file: string): string {
  const hash = createHash('sha256')
  const chunk = Buffer.alloc(1 << 20)
  const handle = openSync(file, 'r')
  try {
    for (let read = readSync(handle, chunk); read > 0; read = readSync(handle, chunk)) hash.update(chunk.subarray(0, read))
  } finally {
    closeSync(handle)
  }
  return hash.digest('hex')
}

/** Finished backups, the newest first. */
export function backupsOf(places: Places): string[] {
  if (!existsSync(places.backups)) return []
  const names = readdirSync(places.backups).filter((name) => name.endsWith('.db'))
  const finished = names.filter((name) => existsSync(join(places.backups, `${name}.json`)))
  return finished
    .sort()
    .reverse()
    .map((name) => join(places.backups, name))
}

/** Wall time of the newest finished backup by its name, ms; null where there is none. */
export function newestBackupAt(places: Places): number | null {
  const [newest] = backupsOf(places)
  const named = /^(\d{4}-\d\d-\d\dT)(\d\d)-(\d\d)-(\d\d\.\d{3}Z)\.db$/.exec(basename(newest ?? ''))
  return named === null ? null : Date.parse(`${named[1]}${named[2]}:${named[3]}:${named[4]}`)
}

/** The newest backup whose bytes are still those of its manifest. */
export function newestBackup(places: Places): string | null {
  return backupsOf(places).find((file) => isAsWritten(file)) ?? null
}

function isAsWritten(file: string): boolean {
  try {
    const manifest = JSON.parse(readFileSync(`${file}.json`, 'utf8')) as Manifest
    return manifest.sha256 === hashOf(file)
  } catch {
    return false
  }
}

function requireRoom(places: Places): void {
  const { bavail, bsize } = statfsSync(places.folder)
  const needed = 2 * statSync(places.database).size
  if (bavail * bsize < needed) throw new StoreProblem('disk-full', `a backup needs ${needed} bytes free, there are ${bavail * bsize}`)
}
