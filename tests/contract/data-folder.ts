import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createSqliteStore, type SqliteOptions, type SqliteStore } from '../../server/storage/sqlite/store.ts'
import { builtProgram } from './built.ts'

/** A data folder for one test. */
export function dataFolder(): { folder: string; remove(): Promise<void> } {
  const folder = mkdtempSync(join(tmpdir(), 'kiln-store-'))
  return { folder, remove: async () => rmSync(folder, { recursive: true, force: true }) }
}

export function sqliteIn(folder: string, over: Partial<SqliteOptions> = {}): SqliteStore {
  return createSqliteStore({ folder, program: builtProgram('storage-worker'), ballastBytes: 1 << 20, ...over })
}
