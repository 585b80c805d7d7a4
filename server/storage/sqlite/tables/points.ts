import { StoreProblem, type CurvePoint, type CurveSeries } from '../../store.ts'
import { bucketWidthMs, grainOf, mergeGrain, thin, type Grain } from '../../thin.ts'
import type { Database, SqlValue, Statement } from '../engine.ts'
import { pointSums } from '../sums.ts'
import { insertSql, selectSql, summed, summedTables, whole } from './summed.ts'

const { series: seriesTable, minute: minuteTable } = summedTables
const minuteMs = 60_000

interface Minute extends Grain {
  series: number
  start: number
  /** Exclusive or of the sums of its points. */
  points: number
}

/** The points of curves, each once, and beside them the minimum and maximum of each minute, so that a long curve reads few rows. */
export class PointTable {
  readonly #insert: Statement
  readonly #findMinute: Statement
  readonly #putMinute: Statement
  readonly #findSeries: Statement
  readonly #nextSeries: Statement
  readonly #putSeries: Statement
  readonly #pointSum = pointSums()
  readonly #series = new Map<string, number>()
  /** The newest minute of each series in the batch at hand. */
  readonly #minutes = new Map<number, Minute>()

  constructor(database: Database) {
    this.#insert = database.prepare('INSERT OR IGNORE INTO point (series, t, value) VALUES (?, ?, ?)')
    this.#findMinute = database.prepare(selectSql(minuteTable, 'WHERE series = ? AND start = ?'))
    this.#putMinute = database.prepare(insertSql(minuteTable, 'INSERT OR REPLACE'))
    this.#findSeries = database.prepare(selectSql(seriesTable, 'WHERE firing = ? AND role = ?'))
    this.#nextSeries = database.prepare('SELECT coalesce(max(id), 0) + 1 AS id FROM series')
    this.#putSeries = database.prepare(insertSql(seriesTable))
  }

  /** After a rollback what was remembered is no longer so. */
  forget(): void {
    this.#series.clear()
    this.#minutes.clear()
  }

  put(firing: string, points: readonly CurvePoint[]): void {
    for (const { role, t, value } of points) {
      const series = this.#seriesId(firing, role)
      const at = Math.round(t)
      const kept = value !== null && Number.isFinite(value) ? value : null
      const { changes } = this.#insert.run(series, at, kept) as { changes: number }
      if (changes > 0) this.#intoMinute(series, at, kept)
    }
    for (const minute of this.#minutes.values()) this.#write(minute)
    // read again by the next batch: those of earlier firings would be written anew with each reading, for years
    this.#minutes.clear()
  }

  #intoMinute(series: number, t: number, value: number | null): void {
    const start = t - (t % minuteMs)
    let minute = this.#minutes.get(series)
    if (minute?.start !== start) {
      if (minute !== undefined) this.#write(minute)
      minute = this.#readMinute(series, start)
      this.#minutes.set(series, minute)
    }
    mergeGrain(minute, grainOf(t, value))
    minute.points ^= this.#pointSum(series, t, value)
  }

  #readMinute(series: number, start: number): Minute {
    const row = this.#findMinute.get(series, start)
    if (row !== undefined) return minuteFrom(row)
    return {
      series,
      start,
      first: start + minuteMs,
      last: start,
      low: null,
      lowAt: null,
      high: null,
      highAt: null,
      nullAt: null,
      count: 0,
      points: 0,
    }
  }

  #write(m: Minute): void {
    this.#putMinute.run(...summed([m.series, m.start, m.first, m.last, m.low, m.lowAt, m.high, m.highAt, m.nullAt, m.count, m.points]))
  }

  #seriesId(firing: string, role: string): number {
    const name = `${role} ${firing}`
    const known = this.#series.get(name)
    if (known !== undefined) return known
    const found = this.#findSeries.get(firing, role)
    const id = Number(found === undefined ? this.#nextSeries.get()?.['id'] : whole(seriesTable, found)['id'])
    if (found === undefined) this.#putSeries.run(...summed([id, firing, role]))
    this.#series.set(name, id)
    return id
  }
}

function minuteFrom(row: Record<string, SqlValue>): Minute {
  whole(minuteTable, row)
  const number = (name: string) => Number(row[name])
  const orNull = (name: string) => (row[name] === null ? null : Number(row[name]))
  return {
    series: number('series'),
    start: number('start'),
    first: number('first'),
    last: number('last'),
    low: orNull('low'),
    lowAt: orNull('low_at'),
    high: orNull('high'),
    highAt: orNull('high_at'),
    nullAt: orNull('null_at'),
    count: number('count'),
    points: number('points'),
  }
}

/** From the minutes where they alone give half as many points as asked, else from the points. */
export function readCurve(database: Database, firing: string, from: number, to: number, buckets: number): CurveSeries[] {
  const rows = database.prepare(selectSql(seriesTable, 'WHERE firing = ? ORDER BY role')).all(firing)
  const width = bucketWidthMs(from, to, buckets)
  return rows.map((row) => {
    const series = Number(whole(seriesTable, row)['id'])
    const minutes = readMinutes(database, series, from, to)
    const coarse = 2 * width >= minuteMs
    const start = coarse ? from - (from % minuteMs) : from
    const grains = coarse ? minutes : readPoints(database, series, minutes).filter((grain) => grain.first >= from && grain.first <= to)
    // whole minutes, so that no bucket cuts one in two
    const step = coarse ? Math.ceil(width / minuteMs) * minuteMs : width
    return { role: row['role'] as CurvePoint['role'], ...thin(grains, start, step) }
  })
}

function readMinutes(database: Database, series: number, from: number, to: number): Minute[] {
  const rest = 'WHERE series = ? AND start >= ? AND start <= ? ORDER BY start'
  return database
    .prepare(selectSql(minuteTable, rest))
    .all(series, from - (from % minuteMs), to)
    .map(minuteFrom)
}

/** The points of whole minutes, each minute checked against its sum. */
function readPoints(database: Database, series: number, minutes: readonly Minute[]): Grain[] {
  const first = minutes[0]?.start ?? 0
  const end = (minutes.at(-1)?.start ?? 0) + minuteMs
  const rows = database.prepare('SELECT t, value FROM point WHERE series = ? AND t >= ? AND t < ? ORDER BY t').all(series, first, end)
  const pointSum = pointSums()
  const sums = new Map(minutes.map((minute) => [minute.start, minute.points]))
  const grains = rows.map((row) => {
    const t = Number(row['t'])
    const value = row['value'] === null ? null : Number(row['value'])
    const start = t - (t % minuteMs)
    sums.set(start, (sums.get(start) ?? 0) ^ pointSum(series, t, value))
    return grainOf(t, value)
  })
  for (const [start, left] of sums) {
    if (left !== 0) throw new StoreProblem('damaged', `points of series ${series} in the minute ${start} do not match their sum`)
  }
  return grains
}

/** The points of one minute row, or none when they do not match its sum or can not be read. */
export function readCurvePoints(database: Database, row: Record<string, SqlValue>): { t: number; value: number | null }[] {
  try {
    const minute = minuteFrom(row)
    return readPoints(database, minute.series, [minute]).map((grain) => ({ t: grain.first, value: grain.low }))
  } catch {
    return []
  }
}

/** Minutes whose points do not match; for a whole check of a file. */
export function damagedMinutes(database: Database): number {
  const pointSum = pointSums()
  const sums = new Map<string, number>()
  for (const row of database.prepare('SELECT series, start, points FROM minute').iterate())
    sums.set(`${row['series']} ${row['start']}`, Number(row['points']))
  for (const row of database.prepare('SELECT series, t, value FROM point').iterate()) {
    const [series, t] = [Number(row['series']), Number(row['t'])]
    const key = `${series} ${t - (t % minuteMs)}`
    sums.set(key, (sums.get(key) ?? 0) ^ pointSum(series, t, row['value'] === null ? null : Number(row['value'])))
  }
  return [...sums.values()].filter((left) => left !== 0).length
}
