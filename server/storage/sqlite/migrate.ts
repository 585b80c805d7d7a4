import { StoreProblem } from '../store.ts'
import { pragma, type Database } from './engine.ts'
import { migrations } from './migrations/all.ts'

/** Brings the schema to the newest version; an older program leaves newer data alone. */
export function migrate(database: Database, steps: readonly string[] = migrations): void {
  const from = schemaVersion(database)
  if (from > steps.length) {
    throw new StoreProblem('unknown', `the data are of version ${from}, this program knows up to ${steps.length}: use the newer program`)
  }
  for (const [index, sql] of steps.entries()) {
    if (index < from) continue
    database.exec('BEGIN IMMEDIATE')
    try {
      database.exec(sql)
      database.exec(`PRAGMA user_version = ${index + 1}`)
      database.exec('COMMIT')
    } catch (error) {
      if (database.isTransaction) database.exec('ROLLBACK')
      throw error
    }
  }
}

export function schemaVersion(database: Database): number {
  return Number(pragma(database, 'user_version'))
}
