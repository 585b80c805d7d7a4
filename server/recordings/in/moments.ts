import type { Ms } from '../../contract/fold.ts'
import type { CsvMatch, TimeWay } from '../../contract/imports.ts'

const iso = /^(\d{4})-(\d\d?)-(\d\d?)(?:[T ](\d\d?):(\d\d)(?::(\d\d(?:[.,]\d+)?))?)?\s*(Z|[+-]\d\d:?\d\d)?$/
const dayOrMonthFirst = /^(\d\d?)[./-](\d\d?)[./-](\d{4})[ T,]+(\d\d?):(\d\d)(?::(\d\d(?:[.,]\d+)?))?$/

/** A recording writes years with four digits (RFC 3339). */
const firstYear = Date.UTC(-1, 12)
const endOfYears = Date.UTC(10_000, 0)

/** A moment as a log writes it; null where it is none, no day of the calendar, or in a year that a recording cannot write. */
export function momentOf(text: string, match: Pick<CsvMatch, 'time' | 'offsetMin' | 'decimal'>, startAt: Ms): Ms | null {
  const at = anyMomentOf(text, match, startAt)
  return at !== null && at >= firstYear && at < endOfYears ? at : null
}

function anyMomentOf(text: string, match: Pick<CsvMatch, 'time' | 'offsetMin' | 'decimal'>, startAt: Ms): Ms | null {
  const cell = text.trim()
  switch (match.time) {
    case 'iso': {
      const found = iso.exec(cell)
      if (!found) return null
      const [, year, month, day, hour = '0', minute = '0', second = '0', zone] = found
      return utcOf([year, month, day, hour, minute, second], zone === undefined ? match.offsetMin : offsetOf(zone))
    }
    case 'day-first':
    case 'month-first': {
      const found = dayOrMonthFirst.exec(cell)
      if (!found) return null
      const [, first, second, year, hour, minute, seconds = '0'] = found
      const [day, month] = match.time === 'day-first' ? [first, second] : [second, first]
      return utcOf([year, month, day, hour, minute, seconds], match.offsetMin)
    }
    case 'seconds-1970':
    case 'minutes': {
      const value = valueOf(cell, match.decimal)
      if (value === null || value < 0) return null
      return Math.round(match.time === 'minutes' ? startAt + value * 60_000 : value * 1000)
    }
  }
}

function utcOf(parts: readonly (string | undefined)[], offsetMin: number): Ms | null {
  const [year = NaN, month = NaN, day = NaN, hour = NaN, minute = NaN, second = NaN] = parts.map((part) => Number(part?.replace(',', '.')))
  const at = Date.UTC(year, month - 1, day, hour, minute)
  const back = new Date(at)
  // Date.UTC takes a year of one or two digits for one of the last century
  if (back.getUTCFullYear() !== year) return null
  if (back.getUTCMonth() !== month - 1 || back.getUTCDate() !== day || hour > 23 || minute > 59 || !(second < 60)) return null
  return Math.round(at + second * 1000 - offsetMin * 60_000)
}

function offsetOf(zone: string): number {
  if (zone === 'Z') return 0
  const digits = zone.replace(/\D/g, '')
  const minutes = Number(digits.slice(0, 2)) * 60 + Number(digits.slice(2))
  return zone.startsWith('-') ? -minutes : minutes
}

/** A number with the decimal sign of the file; null where it is none. */
export function valueOf(text: string, decimal: '.' | ','): number | null {
  const cell = text.trim().replace('−', '-')
  const pattern = decimal === ',' ? /^[+-]?\d+(,\d+)?$/ : /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/
  if (!pattern.test(cell)) return null
  const value = Number(cell.replace(',', '.'))
  return Number.isFinite(value) ? value : null
}

/** The way in which most cells are moments; of two that do as well, the earlier one here. A bad cell must not hide the way of the others. */
export function timeWayOf(cells: readonly string[], decimal: '.' | ','): TimeWay {
  const ways: TimeWay[] = ['iso', 'day-first', 'month-first', 'minutes']
  const fitting = (time: TimeWay): number => cells.filter((cell) => momentOf(cell, { time, offsetMin: 0, decimal }, 0) !== null).length
  const best = ways.reduce((found, way) => (fitting(way) > fitting(found) ? way : found))
  const isLarge = (cell: string): boolean => (valueOf(cell, decimal) ?? 0) > 1e8
  return best === 'minutes' && cells.some(isLarge) ? 'seconds-1970' : best
}
