import { createReadStream } from 'node:fs'
import { pipeline } from 'node:stream'
import { createGunzip } from 'node:zlib'
import type { RecordingHeader, RecordingLine } from '../contract/recording.ts'
import { headerOf, isPicture, lineReader, RecordingProblem } from './read.ts'

export interface RecordingStream {
  header: RecordingHeader
  /** Throws a RecordingProblem at the first line that is none. */
  lines: AsyncGenerator<RecordingLine, void>
}

/**
 * A recording whose lines are read when they are asked for, so that it never lies in memory whole; `.gz` is unpacked on the way.
 * @throws RecordingProblem when the first line is no header
 */
export async function streamRecording(path: string): Promise<RecordingStream> {
  const rows = rowsOf(path)
  const first = await rows.next()
  if (first.done) throw new RecordingProblem(null, 'the file is empty')
  const header = headerOf(first.value)
  return { header, lines: linesOf(header, rows) }
}

async function* linesOf(header: RecordingHeader, rows: AsyncGenerator<string>): AsyncGenerator<RecordingLine, void> {
  const lineOf = lineReader(header)
  let number = 1
  for await (const row of rows) {
    if (isPicture(row)) return
    yield lineOf(row, ++number)
  }
}

async function* rowsOf(path: string): AsyncGenerator<string> {
  const bytes = createReadStream(path)
  // a failure of either ends the loop below with it
  const plain = path.endsWith('.gz') ? pipeline(bytes, createGunzip(), () => {}) : bytes
  const decoder = new TextDecoder('utf-8', { fatal: true })
  let rest = ''
  for await (const chunk of plain) {
    const rows = (rest + decoder.decode(chunk as Buffer, { stream: true })).split('\n')
    rest = rows.pop() ?? ''
    yield* rows
  }
  if (rest.trim() !== '') yield rest
}
