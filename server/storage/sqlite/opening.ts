import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import type { StoreProblem } from '../store.ts'
import { newestBackup, backUp } from './backup.ts'
import { asDamage, checkAll, checkForStart } from './check.ts'
import { openDatabase, type Database } from './engine.ts'
import { migrate, schemaVersion } from './migrate.ts'
import { migrations } from './migrations/all.ts'
import { syncPath, type Places } from './places.ts'
import { salvage, type Salvaged } from './salvage.ts'

/** What a start had to do; nulls on an ordinary one. Paths are within the data folder. */
export interface Opening {
  setAside: string | null
  restoredFrom: string | null
  salvaged: Salvaged | null
  why: string | null
  /** The database's log had vanished after a crash: what was acknowledged last is gone with it. */
  logGone: boolean
}

export const ordinary: Opening = { setAside: null, restoredFrom: null, salvaged: null, why: null, logGone: false }

/** Opens the store's file; a damaged one is set aside and the newest verified backup, with what is still whole in it, takes its place. */
export function openStore(places: Places, nowMs: number): { database: Database; opening: Opening } {
  const there = existsSync(places.database)
  const logGone = there && existsSync(places.open) && !existsSync(`${places.database}-wal`)
  if (logGone) writeFileSync(places.doubt, 'the log is gone')
  writeFileSync(places.open, '')
  let database: Database
  try {
    database = openChecked(places)
  } catch (error) {
    const problem = asDamage(error)
    if (problem.code !== 'damaged') throw problem
    const { database: replaced, opening } = replaceDamaged(places, nowMs, problem)
    return { database: replaced, opening: { ...opening, logGone } }
  }
  rmSync(places.doubt, { force: true })
  upgrade(database, places, nowMs)
  syncRemovals(places)
  return { database, opening: { ...ordinary, logGone } }
}

function openChecked(places: Places): Database {
  const there = existsSync(places.database)
  const database = openDatabase(places.database, 'write')
  try {
    if (there && schemaVersion(database) === migrations.length) {
      if (existsSync(places.doubt)) checkAll(database)
      else checkForStart(database, places.database)
    }
    return database
  } catch (error) {
    database.close()
    throw asDamage(error)
  }
}

/** An older schema is backed up before it is changed; a newer one is left alone. */
function upgrade(database: Database, places: Places, nowMs: number): void {
  try {
    const version = schemaVersion(database)
    if (version > 0 && version < migrations.length) backUp(places, nowMs)
    migrate(database)
  } catch (error) {
    database.close()
    throw error
  }
}

function replaceDamaged(places: Places, nowMs: number, problem: StoreProblem): { database: Database; opening: Opening } {
  const day = new Date(nowMs).toISOString().replaceAll(':', '-').slice(0, 19)
  const aside = join(places.setAside, day)
  mkdirSync(aside, { recursive: true })
  for (const suffix of ['', '-wal', '-shm']) {
    // the log goes with its file: a log left behind would spoil the next one
    if (existsSync(places.database + suffix)) renameSync(places.database + suffix, join(aside, basename(places.database) + suffix))
  }
  const backup = newestBackup(places)
  if (backup !== null) {
    copyFileSync(backup, places.database)
    syncPath(places.database)
  }
  syncPath(places.folder)
  const database = openDatabase(places.database, 'write')
  migrate(database)
  const salvaged = salvageFrom(join(aside, basename(places.database)), database)
  rmSync(places.doubt, { force: true })
  syncRemovals(places)
  return { database, opening: { setAside: aside, restoredFrom: backup, salvaged, why: problem.message, logGone: false } }
}

/**
 * The journal that made a new file was removed; were it back after a power cut, it would undo the file's beginning and all that followed
 * would be unreadable (crash states, F3).
 */
function syncRemovals(places: Places): void {
  syncPath(places.folder)
}

function salvageFrom(file: string, into: Database): Salvaged | null {
  try {
    const damaged = openDatabase(file, 'write')
    try {
      return salvage(damaged, into)
    } finally {
      damaged.close()
    }
  } catch {
    if (into.isTransaction) into.exec('ROLLBACK')
    return null
  }
}
