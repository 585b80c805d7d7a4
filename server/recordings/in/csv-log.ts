import type { Ms } from '../../contract/fold.ts'
import { columnKinds, separators } from '../../contract/imports.ts'
import type { ColumnKind, CsvMatch } from '../../contract/imports.ts'
import type { RecordingLine } from '../../contract/recording.ts'
import { roles } from '../../contract/vocabulary.ts'
import type { Role } from '../../contract/vocabulary.ts'
import { asWritten, ImportRefusal, rowsIn } from '../csv/rows.ts'
import type { Row } from '../csv/rows.ts'
import { longestDays } from '../read.ts'
import type { Recording } from '../read.ts'
import { momentOf, timeWayOf, valueOf } from './moments.ts'

const sampleRows = 8

/** A CSV log as it lies there: its first record names the columns. */
export interface CsvFile {
  header: string[]
  rows: Row[]
}

/** A step a row. @throws ImportRefusal */
export function* openCsv(text: string, separator: CsvMatch['separator']): Generator<Row, CsvFile> {
  let first: Row | null = null
  const rows: Row[] = []
  for (const row of rowsIn(text, separator)) {
    if (first === null) first = row
    else if (row.cells.length !== first.cells.length)
      throw new ImportRefusal('cells-differ', row.line, `${row.cells.length} / ${first.cells.length}`)
    else rows.push(row)
    yield row
  }
  if (!first) throw new ImportRefusal('empty', null)
  if (rows.length === 0) throw new ImportRefusal('no-rows', null)
  return { header: first.cells.map(asWritten), rows }
}

/** The sign that parts the first line into most fields. */
export function separatorOf(text: string): CsvMatch['separator'] {
  const line = /^[^\r\n]*/.exec(text.replace(/^\ufeff/, ''))?.[0] ?? ''
  return [...separators].sort((a, b) => line.split(b).length - line.split(a).length)[0] ?? ','
}

/** What a column is likely to be, by its heading, in the words of the house and a few common ones; a person looks at it before it counts. */
const headings: [RegExp, ColumnKind][] = [
  [/^(time|date|datetime|timestamp|at|hora|fecha|minutes?|min|เวลา)\b/i, 'time'],
  [/smoke-estimated/i, 'skip'],
  [/fire ?box|hearth|fogón|hogar/i, 'firebox'],
  [/wall|drum|pared|tambor/i, 'wall'],
  [/outlet|condens|salida/i, 'outlet'],
  [/smoke|chimney|humo|chimenea/i, 'smoke'],
  [/ambient|outside|aire|exterior/i, 'ambient'],
  [/core|inside|interior/i, 'core'],
  [/bottle|botella/i, 'bottle'],
  [/^co\b/i, 'co'],
  [/note|nota|comment|words/i, 'note'],
]

/** A first guess at how to read it. */
export function guessMatch({ header, rows }: CsvFile, separator: CsvMatch['separator']): CsvMatch {
  const taken = new Set<ColumnKind>()
  const columns = header.map((name) => {
    const kind = headings.find(([pattern]) => pattern.test(name.trim()))?.[1] ?? 'skip'
    if (kind === 'skip' || taken.has(kind)) return 'skip'
    taken.add(kind)
    return kind
  })
  const decimal =
    separator !== ',' && rows.slice(0, 200).some(({ cells }) => cells.some((cell) => /^-?\d+,\d+$/.test(cell.trim()))) ? ',' : '.'
  const timeColumn = columns.indexOf('time')
  const times = rows.slice(0, 50).map(({ cells }) => cells[timeColumn] ?? '')
  return {
    separator,
    decimal,
    time: timeWayOf(times, decimal),
    offsetMin: 0,
    startAt: null,
    unit: /°?F\b/.test(header.join(' ')) ? 'F' : 'C',
    columns,
  }
}

export function sampleOf({ rows }: CsvFile): string[][] {
  return rows.slice(0, sampleRows).map(({ cells }) => cells)
}

const node = 'yard/table'

/** A CSV log as a recording of one node with a channel for each column, a step a row. @throws ImportRefusal that names the line of the first bad row */
export function* recordingOf({ rows }: CsvFile, match: CsvMatch, title: string): Generator<Row, Recording> {
  for (const kind of columnKinds) {
    if (kind !== 'skip' && match.columns.filter((one) => one === kind).length > 1) throw new ImportRefusal('role-twice', null, kind)
  }
  const timeColumn = match.columns.indexOf('time')
  if (timeColumn < 0) throw new ImportRefusal('no-time-column', null)
  const given = match.columns.flatMap((kind, index) => (isRole(kind) ? [{ role: kind, index }] : []))
  if (given.length === 0) throw new ImportRefusal('no-value-column', null)
  const startAt = startOf(match)
  const noteColumn = match.columns.indexOf('note')
  const lines: RecordingLine[] = []
  let first: Ms | null = null
  let last: Ms = -Infinity
  let seq = 0
  for (const row of rows) {
    yield row
    const text = row.cells[timeColumn] ?? ''
    const at = momentOf(text, match, startAt)
    if (at === null) throw new ImportRefusal('bad-time', row.line, text)
    if (at < last) throw new ImportRefusal('time-goes-back', row.line, text)
    last = at
    first ??= at
    if (at - first > longestDays * 86_400_000) throw new ImportRefusal('too-long', row.line, text)
    const records = given.flatMap(({ role, index }) => recordOf(role, row, index, match))
    const iso = new Date(at).toISOString()
    if (records.length > 0) {
      const [own, ...more] = records
      const pack = [{ bn: `${node}/`, ...own, t: 0 }, ...more]
      const identity = [
        { n: 'boot', u: 'count', v: 1 },
        { n: 'seq', u: 'count', v: ++seq },
        { n: 'up', u: 's', v: Math.round((at - firstOf(lines, at)) / 1000) },
      ]
      lines.push({ at: iso, topic: `firing/1/${node}/readings`, payload: [...pack, ...identity], retained: false })
    }
    const note = asWritten(row.cells[noteColumn] ?? '').trim()
    if (note !== '') lines.push({ at: iso, id: `row-${row.line}`, doneAt: iso, action: 'note', text: note.slice(0, 4000) })
  }
  if (seq === 0) throw new ImportRefusal('no-rows', null)
  return { header: { recording: 1, title, roles: Object.fromEntries(given.map(({ role }) => [`${node}/${role}`, role])) }, lines }
}

function recordOf(role: Role, row: Row, index: number, { decimal, unit }: CsvMatch): { n: string; u: string; v: number }[] {
  const cell = (row.cells[index] ?? '').trim()
  if (cell === '') return []
  const value = valueOf(cell, decimal)
  if (value === null) throw new ImportRefusal('bad-number', row.line, cell)
  if (role === 'bottle') return [{ n: role, u: 'kg', v: value }]
  if (role === 'co') return [{ n: role, u: 'ppm', v: value }]
  return [{ n: role, u: 'Cel', v: unit === 'F' ? Math.round(((value - 32) / 1.8) * 1000) / 1000 : value }]
}

function startOf({ time, startAt }: CsvMatch): Ms {
  if (time !== 'minutes') return 0
  const at = startAt === null ? NaN : Date.parse(startAt)
  if (!Number.isFinite(at)) throw new ImportRefusal('bad-start', null, startAt ?? '')
  return at
}

function firstOf(lines: readonly RecordingLine[], at: Ms): Ms {
  const first = lines[0]
  return first ? Date.parse(first.at) : at
}

function isRole(kind: ColumnKind): kind is Role {
  return (roles as readonly string[]).includes(kind)
}
