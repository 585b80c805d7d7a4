import { wholeCurvePoints } from '../../../contract/live.ts'
import type { CurvePoint, CurveSeries } from '../../store.ts'
import type { Database, SqlValue } from '../engine.ts'
import { readCurve } from './points.ts'
import { insertSql, rowIsWhole, selectSql, summed, summedTables } from './summed.ts'

const table = summedTables.drawn

/** A whole curve as it was drawn; it holds as long as its firing has so many readings. */
export interface Drawn {
  firing: string
  from: number
  to: number
  readings: number
  series: CurveSeries[]
}

/** The kept one where it still holds, else `kept: false` and one drawn anew. */
export function readDrawn(database: Database, firing: string, from: number, to: number): Drawn & { kept: boolean } {
  // counted first: readings that come while it is drawn make the count too small, and it is drawn once more
  const readings = readingsOf(database, firing)
  const row = database.prepare(selectSql(table, 'WHERE firing = ?')).get(firing)
  if (row?.['readings'] === readings && row['from_at'] === from && row['to_at'] === to && rowIsWhole(table, row)) {
    return { firing, from, to, readings, series: unpacked(row['curve'] as Uint8Array, from), kept: true }
  }
  return { firing, from, to, readings, series: readCurve(database, firing, from, to, wholeCurvePoints), kept: false }
}

export function putDrawn(database: Database, { firing, from, to, readings, series }: Drawn): void {
  const values: SqlValue[] = [firing, from, to, readings, packed(series, from)]
  database.prepare(insertSql(table, 'INSERT OR REPLACE')).run(...summed(values))
}

function readingsOf(database: Database, firing: string): number {
  const sql = 'SELECT coalesce(sum(count), 0) AS readings FROM minute WHERE series IN (SELECT id FROM series WHERE firing = ?)'
  return Number(database.prepare(sql).get(firing)?.['readings'])
}

const bytesOfPoint = 16

/** A JSON head with the roles and their lengths, then times after `from` and values as 64-bit numbers, little-endian; NaN is a gap. */
function packed(series: readonly CurveSeries[], from: number): Uint8Array {
  const head = new TextEncoder().encode(JSON.stringify(series.map(({ role, t }) => [role, t.length])))
  const points = series.reduce((sum, { t }) => sum + t.length, 0)
  const bytes = new Uint8Array(4 + head.length + points * bytesOfPoint)
  const view = new DataView(bytes.buffer)
  view.setUint32(0, head.length, true)
  bytes.set(head, 4)
  let at = 4 + head.length
  for (const { t, value } of series) {
    for (const [index, time] of t.entries()) {
      view.setFloat64(at, time - from, true)
      view.setFloat64(at + 8, value[index] ?? NaN, true)
      at += bytesOfPoint
    }
  }
  return bytes
}

function unpacked(bytes: Uint8Array, from: number): CurveSeries[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const headBytes = view.getUint32(0, true)
  const head = JSON.parse(new TextDecoder().decode(bytes.subarray(4, 4 + headBytes))) as [CurvePoint['role'], number][]
  let at = 4 + headBytes
  return head.map(([role, length]) => {
    const t = new Array<number>(length)
    const value = new Array<number | null>(length)
    for (let index = 0; index < length; index++) {
      const one = view.getFloat64(at + 8, true)
      t[index] = from + view.getFloat64(at, true)
      value[index] = Number.isNaN(one) ? null : one
      at += bytesOfPoint
    }
    return { role, t, value }
  })
}
