import { gunzipSync } from 'node:zlib'
import type { z } from 'zod'
import type { RecordedPicture, RecordingHeader, RecordingLine } from '../contract/recording.ts'
import { headerSchema, lineSchema, pictureSchema } from './schema.ts'

/** Pictures are no lines: see `apart`. */
export interface Recording {
  header: RecordingHeader
  lines: RecordingLine[]
}

/** The file is no recording; the message is one sentence that names the line. */
export class RecordingProblem extends Error {
  readonly line: number | null
  constructor(line: number | null, what: string) {
    super(line === null ? what : `line ${line}: ${what}`)
    this.name = 'RecordingProblem'
    this.line = line
  }
}

const largestBytes = 1 << 29
const linesAtOnce = 500
/** Every second of a recording is played; a kiln that lies sealed longer than this was forgotten. Common practice, no source. */
export const longestDays = 62

/**
 * Reads the text of a recording some lines at once, so that whatever else runs in the program gets its turn.
 * @throws RecordingProblem at the first line that is none.
 */
export async function readRecordingInSlices(text: string, pause: () => Promise<void>): Promise<Recording> {
  const rows = withoutPictures(rowsOf(text))
  const header = headerOf(rows[0] ?? '')
  const lines: RecordingLine[] = []
  const lineOf = lineReader(header)
  for (const [index, row] of rows.entries()) {
    if (index === 0) continue
    lines.push(lineOf(row, index + 1))
    if (index % linesAtOnce === 0) await pause()
  }
  return { header, lines }
}

/** Reads a recording, plain or compressed. @throws RecordingProblem at the first line that is none. */
export function readRecording(file: Uint8Array): Recording {
  const [first = '', ...rest] = withoutPictures(rowsOf(textOf(file)))
  const header = headerOf(first)
  const lineOf = lineReader(header)
  return { header, lines: rest.map((row, index) => lineOf(row, index + 2)) }
}

/** At least one. */
function rowsOf(text: string): string[] {
  const rows = text.split('\n')
  while (rows.length > 0 && rows.at(-1)?.trim() === '') rows.pop()
  if (rows.length === 0) throw new RecordingProblem(null, 'the file is empty')
  return rows
}

/** A glass as it was photographed. Such rows stand after all lines, so that a recording begins with the bytes of the one without pictures. */
export function isPicture(row: string): boolean {
  return row.startsWith('{"picture":')
}

function withoutPictures(rows: readonly string[]): string[] {
  return rows.slice(0, rows.findLastIndex((row) => !isPicture(row)) + 1)
}

/**
 * The text of a recording without its pictures, byte for byte, and the pictures.
 * @throws RecordingProblem at the first picture that is none
 */
export function apart(text: string): { plain: string; pictures: RecordedPicture[] } {
  const rows = text.split('\n')
  const lines = rows.findIndex(isPicture)
  if (lines < 0) return { plain: text, pictures: [] }
  const pictures = rows.flatMap((row, index) =>
    index < lines || row.trim() === '' ? [] : [check(pictureSchema, objectOf(row, index + 1), index + 1) as RecordedPicture],
  )
  return {
    plain: rows
      .slice(0, lines)
      .map((row) => `${row}\n`)
      .join(''),
    pictures,
  }
}

function textOf(file: Uint8Array): string {
  const zipped = file[0] === 0x1f && file[1] === 0x8b
  let plain = file
  if (zipped) {
    try {
      plain = gunzipSync(file, { maxOutputLength: largestBytes })
    } catch {
      throw new RecordingProblem(null, 'the compressed file is damaged or too large')
    }
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(plain)
  } catch {
    throw new RecordingProblem(null, 'the file is no UTF-8 text')
  }
}

/** @throws RecordingProblem */
export function headerOf(row: string): RecordingHeader {
  const value = objectOf(row, 1)
  if (!('recording' in value)) throw new RecordingProblem(1, 'the first line is no header with "recording": 1')
  if (value.recording !== 1) throw new RecordingProblem(1, `recording version ${JSON.stringify(value.recording)} is not known here, only 1`)
  return check(headerSchema, value, 1) as RecordingHeader
}

/** For the lines of one recording, in their order; `number` counts from 1, the header's. What it gives throws RecordingProblem. */
export function lineReader({ start }: RecordingHeader): (row: string, number: number) => RecordingLine {
  let from = start ? Date.parse(start.at) : null
  return (row, number) => {
    const value = objectOf(row, number)
    const line = check(lineSchema(value), value, number) as RecordingLine
    const at = Date.parse(line.at)
    from ??= at
    if (at - from > longestDays * 86_400_000) {
      throw new RecordingProblem(number, `"at" lies more than ${longestDays} days after the beginning: no firing lasts so long`)
    }
    return line
  }
}

function objectOf(row: string, number: number): object & { recording?: unknown } {
  let value: unknown
  try {
    value = JSON.parse(row)
  } catch {
    throw new RecordingProblem(number, 'is no JSON')
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) throw new RecordingProblem(number, 'is no JSON object')
  return value
}

function check(schema: z.ZodType, value: unknown, number: number): unknown {
  const result = schema.safeParse(value)
  if (result.success) return result.data
  const issue = result.error.issues[0]
  const path = issue && issue.path.length > 0 ? `"${issue.path.join('.')}" ` : ''
  throw new RecordingProblem(number, `${path}${issue?.message ?? 'is not understood'}`)
}
