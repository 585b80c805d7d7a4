import { StoreProblem } from '../../store.ts'
import type { Database, SqlValue } from '../engine.ts'
import { rowSum } from '../sums.ts'

/** A table whose rows end with the sum of the columns before it. */
export interface SummedTable {
  name: string
  columns: readonly string[]
  /** What a row is ordered and told apart by. */
  key: readonly string[]
}

export const summedTables = {
  journal: { name: 'journal', columns: ['seq', 'prev', 'at', 'kind', 'kiln', 'topic', 'retained', 'payload'], key: ['seq'] },
  checkpoint: { name: 'checkpoint', columns: ['name', 'seq', 'at', 'version', 'bytes'], key: ['name', 'seq', 'at'] },
  quarantine: {
    name: 'quarantine',
    columns: ['at', 'sender', 'topic', 'reason', 'payload'],
    key: ['at', 'sender', 'topic', 'reason', 'sum'],
  },
  output: { name: 'output', columns: ['kiln', 'cause', 'at', 'n', 'firing', 'json'], key: ['kiln', 'cause', 'at', 'n'] },
  series: { name: 'series', columns: ['id', 'firing', 'role'], key: ['id'] },
  minute: {
    name: 'minute',
    columns: ['series', 'start', 'first', 'last', 'low', 'low_at', 'high', 'high_at', 'null_at', 'count', 'points'],
    key: ['series', 'start'],
  },
  shelf: { name: 'shelf', columns: ['firing', 'started_at', 'json'], key: ['firing'] },
  drawn: { name: 'drawn', columns: ['firing', 'from_at', 'to_at', 'readings', 'curve'], key: ['firing'] },
  firing: { name: 'firing', columns: ['id', 'kiln', 'started_at', 'json', 'intake'], key: ['id'] },
  document: { name: 'document', columns: ['kind', 'id', 'revision', 'at', 'by', 'json'], key: ['kind', 'id', 'revision'] },
} as const satisfies Record<string, SummedTable>

export function insertSql(table: SummedTable, verb: 'INSERT OR IGNORE' | 'INSERT OR REPLACE' = 'INSERT OR IGNORE'): string {
  const columns = [...table.columns, 'sum']
  return `${verb} INTO ${table.name} (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`
}

/** The values of a row with their sum behind them. */
export function summed(values: readonly SqlValue[]): SqlValue[] {
  return [...values, rowSum(values)]
}

export function rowIsWhole(table: SummedTable, row: Record<string, SqlValue>): boolean {
  return rowSum(table.columns.map((column) => row[column] ?? null)) === row['sum']
}

/** Gives back the row, or says which row of which table is damaged. */
export function whole<R extends Record<string, SqlValue>>(table: SummedTable, row: R): R {
  if (rowIsWhole(table, row)) return row
  const key = table.key.map((column) => String(row[column])).join(' ')
  throw new StoreProblem('damaged', `a row of ${table.name} does not match its sum: ${key}`)
}

export function selectSql(table: SummedTable, rest: string): string {
  return `SELECT ${[...table.columns, 'sum'].join(', ')} FROM ${table.name} ${rest}`
}

/** Rows of one table whose sums do not match; stops counting at `limit`. */
export function damagedRows(database: Database, table: SummedTable, limit: number): number {
  let damaged = 0
  for (const row of database.prepare(selectSql(table, '')).iterate()) {
    if (!rowIsWhole(table, row)) damaged++
    if (damaged >= limit) break
  }
  return damaged
}
