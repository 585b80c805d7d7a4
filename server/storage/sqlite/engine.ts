import * as bundledEngine from '@photostructure/sqlite'
import { StoreProblem } from '../store.ts'
import { problemFrom } from './problems.ts'

export type SqlValue = null | number | string | Uint8Array

/** The part of `DatabaseSync` that Node's own module and the stand-in for older Nodes share, and that we use. */
export interface Statement {
  run(...values: SqlValue[]): unknown
  get(...values: SqlValue[]): Record<string, SqlValue> | undefined
  all(...values: SqlValue[]): Record<string, SqlValue>[]
  iterate(...values: SqlValue[]): Iterable<Record<string, SqlValue>>
}
export interface Database {
  exec(sql: string): void
  prepare(sql: string): Statement
  close(): void
  readonly isTransaction: boolean
}
interface EngineModule {
  DatabaseSync: new (file: string, options?: { readOnly?: boolean; timeout?: number }) => Database
}

/** Versions 3.7.0 to 3.51.2 can lose a commit when a checkpoint resets the log at the same moment (reliability 2.3). */
const oldestVersion = [3, 51, 3] as const
const busyTimeoutMs = 5000

function newEnough(version: string): boolean {
  const parts = version.split('.').map(Number)
  for (const [index, least] of oldestVersion.entries()) {
    const part = parts[index] ?? 0
    if (part !== least) return part > least
  }
  return true
}

export function versionOf(engine: EngineModule): string {
  const database = new engine.DatabaseSync(':memory:')
  const version = String(database.prepare('SELECT sqlite_version() AS version').get()?.['version'])
  database.close()
  return version
}

/** Node's own SQLite where it is there and new enough, else the bundled one. */
export function loadEngine(): EngineModule {
  const own = process.getBuiltinModule('node:sqlite' as 'node:fs') as unknown as EngineModule | undefined
  if (own !== undefined && newEnough(versionOf(own))) return own
  const bundled = bundledEngine as unknown as EngineModule
  const version = versionOf(bundled)
  if (!newEnough(version)) throw new StoreProblem('unknown', `SQLite ${version} is older than ${oldestVersion.join('.')}`)
  return bundled
}

/** One value of a pragma, by whatever name its column has. */
export function pragma(database: Database, text: string): SqlValue {
  return Object.values(database.prepare(`PRAGMA ${text}`).get() ?? {})[0] ?? null
}

/**
 * Opens a connection with the settings that the promise rests on, and reads them back: the bundled build starts WAL with NORMAL,
 * which forgets acknowledged rows in a power cut.
 */
export function openDatabase(file: string, mode: 'write' | 'read'): Database {
  try {
    const database = new (loadEngine().DatabaseSync)(file, { readOnly: mode === 'read', timeout: busyTimeoutMs })
    try {
      if (mode === 'write') database.exec('PRAGMA journal_mode = WAL')
      database.exec('PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA cell_size_check = ON')
      // after a busy hour the log file is cut back to this, 16 MiB
      database.exec('PRAGMA journal_size_limit = 16777216')
      assertDurable(database, mode)
      return database
    } catch (error) {
      database.close()
      throw error
    }
  } catch (error) {
    throw problemFrom(error)
  }
}

export function assertDurable(database: Database, mode: 'write' | 'read'): void {
  const synchronous = pragma(database, 'synchronous')
  if (synchronous !== 2) throw new StoreProblem('io', `synchronous is ${String(synchronous)} instead of FULL`)
  const journal = pragma(database, 'journal_mode')
  if (mode === 'write' && journal !== 'wal') throw new StoreProblem('io', `journal_mode is ${String(journal)} instead of wal`)
}
