import type { CurvePoint } from '../store.ts'
import type { Database, SqlValue } from './engine.ts'
import { readCurvePoints, PointTable } from './tables/points.ts'
import { insertSql, rowIsWhole, selectSql, summed, summedTables, type SummedTable } from './tables/summed.ts'

/** Rows taken over, by table. */
export type Salvaged = Record<string, number>

/** Copies what still matches its sum out of a damaged file into a whole one; what the target has already stays as it is there. */
export function salvage(from: Database, into: Database): Salvaged {
  const taken: Salvaged = {}
  into.exec('BEGIN IMMEDIATE')
  taken['journal'] = salvageJournal(from, into)
  for (const name of ['checkpoint', 'quarantine', 'output', 'firing', 'document'] as const)
    taken[name] = salvageTable(from, into, summedTables[name])
  taken['point'] = salvagePoints(from, into)
  into.exec('COMMIT')
  return taken
}

/** Rows in order until the engine can read no further. */
function* readable(from: Database, sql: string, ...values: SqlValue[]): Iterable<Record<string, SqlValue>> {
  try {
    yield* from.prepare(sql).iterate(...values)
  } catch {
    // the rest of this table can not be reached
  }
}

function salvageTable(from: Database, into: Database, table: SummedTable): number {
  const insert = into.prepare(insertSql(table))
  let taken = 0
  for (const row of readable(from, selectSql(table, ''))) {
    if (!rowIsWhole(table, row)) continue
    taken += changesOf(insert.run(...[...table.columns, 'sum'].map((column) => row[column] ?? null)))
  }
  return taken
}

/** Only what came after the target's last entry; the chain is knit anew, and a lost entry leaves a hole in the numbers. */
function salvageJournal(from: Database, into: Database): number {
  const table = summedTables.journal
  const insert = into.prepare(insertSql(table))
  let prev = Number(into.prepare('SELECT coalesce(max(seq), 0) AS seq FROM journal').get()?.['seq'])
  let taken = 0
  for (const row of readable(from, selectSql(table, 'WHERE seq > ? ORDER BY seq'), prev)) {
    if (!rowIsWhole(table, row)) continue
    insert.run(...summed(table.columns.map((column) => (column === 'prev' ? prev : (row[column] ?? null)))))
    prev = Number(row['seq'])
    taken++
  }
  return taken
}

function salvagePoints(from: Database, into: Database): number {
  const points = new PointTable(into)
  let taken = 0
  for (const row of readable(from, selectSql(summedTables.series, ''))) {
    if (!rowIsWhole(summedTables.series, row)) continue
    const role = row['role'] as CurvePoint['role']
    for (const minute of readable(from, selectSql(summedTables.minute, 'WHERE series = ?'), row['id'] ?? null)) {
      if (!rowIsWhole(summedTables.minute, minute)) continue
      const found = readCurvePoints(from, minute)
      points.put(
        String(row['firing']),
        found.map(({ t, value }) => ({ role, t, value })),
      )
      taken += found.length
    }
  }
  return taken
}

function changesOf(result: unknown): number {
  return (result as { changes: number }).changes
}
