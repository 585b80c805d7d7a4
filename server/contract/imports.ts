import type { Ms } from './fold.ts'
import { roles } from './vocabulary.ts'

// Taking firings in: a recording (.jsonl, .jsonl.gz) or a plain CSV log, looked at before anything is kept.

export const importProblemCodes = [
  'empty',
  'not-text',
  'too-large',
  'damaged',
  'no-rows',
  'open-quote',
  'stray-quote',
  'cells-differ',
  'bad-time',
  'time-goes-back',
  'too-long',
  'bad-number',
  'bad-start',
  'bad-line',
  'no-time-column',
  'no-value-column',
  'role-twice',
] as const
export type ImportProblemCode = (typeof importProblemCodes)[number]

export interface ImportProblem {
  code: ImportProblemCode
  /** Line of the file, counted from 1; null where the whole file is meant. */
  line: number | null
  /** What stands there, shortened. */
  found: string
}

export const columnKinds = ['skip', 'time', ...roles, 'note'] as const
export type ColumnKind = (typeof columnKinds)[number]

export const timeWays = ['iso', 'day-first', 'month-first', 'seconds-1970', 'minutes'] as const
export type TimeWay = (typeof timeWays)[number]

export const separators = [',', ';', '\t'] as const

/** How a CSV log is to be read. */
export interface CsvMatch {
  separator: (typeof separators)[number]
  decimal: '.' | ','
  time: TimeWay
  /** Minutes east of UTC, for times that do not say so themselves. */
  offsetMin: number
  /** For `minutes`: when the count began, ISO 8601. */
  startAt: string | null
  unit: 'C' | 'F'
  /** One a column of the file. */
  columns: ColumnKind[]
}

export interface ImportPreview {
  kind: 'recording' | 'csv'
  /** As it will stand on the shelf. */
  id: string
  /** The same file was taken in before. */
  known: boolean
  title: string
  problems: ImportProblem[]
  /** Lines with readings, entries of the log, and their span; zero and null while there are problems. */
  readings: number
  acts: number
  from: Ms | null
  to: Ms | null
  csv: { match: CsvMatch; header: string[]; sample: string[][] } | null
}
