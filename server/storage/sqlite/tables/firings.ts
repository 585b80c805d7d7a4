import { summaryOf, type FiringRecord } from '../../store.ts'
import type { Database, SqlValue } from '../engine.ts'
import { insertSql, rowIsWhole, selectSql, summed, summedTables, whole } from './summed.ts'

const { firing, shelf } = summedTables

/** The record, and what the list shows of it in a row of its own. */
export function putFiring(database: Database, record: FiringRecord): void {
  const { intake, ...rest } = record
  const values: SqlValue[] = [record.id, record.kiln, record.startedAt, JSON.stringify(rest), intake]
  database.prepare(insertSql(firing, 'INSERT OR REPLACE')).run(...summed(values))
  putOnShelf(database, record)
}

function putOnShelf(database: Database, record: FiringRecord): void {
  const values: SqlValue[] = [record.id, record.startedAt, JSON.stringify(summaryOf(record))]
  database.prepare(insertSql(shelf, 'INSERT OR REPLACE')).run(...summed(values))
}

/** Rows for the firings that have none: those of an older program, and those taken over from a damaged file. */
export function fillShelf(database: Database): void {
  const missing = database.prepare('SELECT id FROM firing WHERE id NOT IN (SELECT firing FROM shelf)').all()
  if (missing.length === 0) return
  database.exec('BEGIN IMMEDIATE')
  for (const { id } of missing) {
    const row = database.prepare(selectSql(firing, 'WHERE id = ?')).get(id ?? null)
    if (row !== undefined && rowIsWhole(firing, row)) putOnShelf(database, firingFrom(row))
  }
  database.exec('COMMIT')
}

function firingFrom(row: Record<string, SqlValue>): FiringRecord {
  whole(firing, row)
  return { ...(JSON.parse(String(row['json'])) as Omit<FiringRecord, 'intake'>), intake: row['intake'] as Uint8Array }
}

export function readFiring(database: Database, id: string): FiringRecord | null {
  const row = database.prepare(selectSql(firing, 'WHERE id = ?')).get(id)
  return row === undefined ? null : firingFrom(row)
}

/** Every record against its sum. */
export function checkFirings(database: Database): void {
  for (const row of database.prepare(selectSql(firing, '')).iterate()) whole(firing, row)
}

/** The newest first, as the text of a JSON array: it goes to the page as it lies here. */
export function readShelf(database: Database, most: number): string {
  const rows = database.prepare(selectSql(shelf, 'ORDER BY started_at DESC, firing DESC LIMIT ?')).all(most)
  return `[${rows.map((row) => String(whole(shelf, row)['json'])).join(',')}]`
}
