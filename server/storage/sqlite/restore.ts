import { copyFileSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { basename, join } from 'node:path'
import { StoreProblem } from '../store.ts'
import { hashOf } from './backup.ts'
import type { Manifest } from './backup.ts'
import { asDamage, checkAll } from './check.ts'
import { openDatabase } from './engine.ts'
import { lockFolder } from './lock.ts'
import { migrate, schemaVersion } from './migrate.ts'
import { placesIn, syncPath } from './places.ts'

/** Closing alone does not do it while a statement waits to be collected. */
const foldSql = 'PRAGMA wal_checkpoint(TRUNCATE)'

/**
 * Puts a backup in the place of the database. The copy is checked whole before anything is touched; what stood there is set aside, its log
 * with it.
 * @returns folder of what was set aside, null where there was nothing
 * @throws StoreProblem `in-use`; `damaged` for what is no backup, a spoilt one, or one of a newer program
 */
export function restoreBackup(file: string, folder: string, nowMs: number): string | null {
  const places = placesIn(folder)
  if (!existsSync(file)) throw new StoreProblem('unknown', `there is no file ${file}`)
  const lock = lockFolder(places.lock)
  const fresh = `${places.database}.restoring`
  const leave = () => {
    for (const suffix of ['', '-wal', '-shm']) rmSync(fresh + suffix, { force: true })
  }
  try {
    leave()
    if (existsSync(`${file}.json`)) asInManifest(file)
    copyFileSync(file, fresh)
    checkCopy(fresh)
    syncPath(fresh)
    return swap(fresh, folder, nowMs)
  } finally {
    leave()
    lock.close()
  }
}

function asInManifest(file: string): void {
  const { sha256 } = JSON.parse(readFileSync(`${file}.json`, 'utf8')) as Manifest
  if (sha256 !== hashOf(file)) throw new StoreProblem('damaged', 'the backup is not what its manifest says')
}

function checkCopy(fresh: string): void {
  try {
    const database = openDatabase(fresh, 'write')
    try {
      if (schemaVersion(database) === 0) throw new StoreProblem('damaged', 'this is no backup of this program')
      migrate(database)
      checkAll(database)
      database.exec(foldSql)
    } finally {
      database.close()
    }
  } catch (error) {
    throw asDamage(error)
  }
}

function swap(fresh: string, folder: string, nowMs: number): string | null {
  const places = placesIn(folder)
  let aside: string | null = null
  if (existsSync(places.database)) {
    aside = join(places.setAside, `${new Date(nowMs).toISOString().replaceAll(':', '-').slice(0, 19)}-restore`)
    mkdirSync(aside, { recursive: true })
    foldLog(places.database)
    // a log left behind would be played onto the backup
    for (const suffix of ['-shm', '-wal', '']) {
      const old = places.database + suffix
      if (existsSync(old)) (suffix === '' ? copyFileSync : renameSync)(old, join(aside, basename(old)))
    }
    syncPath(aside)
  }
  renameSync(fresh, places.database)
  rmSync(places.open, { force: true })
  syncPath(folder)
  return aside
}

/** So that a stop in the middle leaves a whole database. A damaged one keeps its log and goes aside with it. */
function foldLog(database: string): void {
  try {
    const open = openDatabase(database, 'write')
    try {
      open.exec(foldSql)
    } finally {
      open.close()
    }
  } catch {
    // it is put aside as it is
  }
}
