import { createHash } from 'node:crypto'
import { gunzipSync } from 'node:zlib'
import type { CsvMatch, ImportPreview } from '../../contract/imports.ts'
import type { RecordedPicture, RecordingLine } from '../../contract/recording.ts'
import type { Store } from '../../storage/store.ts'
import { ImportRefusal } from '../csv/rows.ts'
import { inSlices } from '../slices.ts'
import { apart, readRecordingInSlices, RecordingProblem } from '../read.ts'
import type { Recording } from '../read.ts'
import { guessMatch, openCsv, recordingOf, sampleOf, separatorOf } from './csv-log.ts'

const largestPlainBytes = 64 * 1024 * 1024

/** A file as it was understood: what a person is shown before anything is kept, and what would then be played. */
export interface Looked {
  preview: ImportPreview
  /** Null while there are problems. */
  file: { id: string; text: string; recording: Recording; pictures: RecordedPicture[] } | null
}

/**
 * Looks at a file without keeping anything of it.
 * @param match how a person says that a CSV log is to be read; null for a first guess
 */
export async function lookAt(store: Store, bytes: Uint8Array, name: string, match: CsvMatch | null): Promise<Looked> {
  const title = name.replace(/\.(csv|txt|jsonl|gz)\b/gi, '').slice(0, 200)
  const preview: ImportPreview = {
    kind: 'recording',
    id: '',
    known: false,
    title,
    problems: [],
    readings: 0,
    acts: 0,
    from: null,
    to: null,
    csv: null,
  }
  try {
    const { plain: text, pictures } = apart(textOf(bytes))
    const recording = /^\s*\{/.test(text) ? await readLines(text) : await csvOf(text, title, match, preview)
    const lines = preview.kind === 'csv' ? await linesInSlices(recording) : text
    preview.id = `import-${contentHash(lines).slice(0, 12)}`
    preview.known = (await store.firing(preview.id)) !== null
    preview.title = recording.header.title ?? ''
    count(preview, recording.lines)
    return { preview, file: { id: preview.id, text: lines, recording, pictures } }
  } catch (problem) {
    if (problem instanceof ImportRefusal) preview.problems.push(problem.problem)
    else if (problem instanceof RecordingProblem)
      preview.problems.push({ code: 'bad-line', line: problem.line, found: problem.message.slice(0, 200) })
    else throw problem
    return { preview, file: null }
  }
}

/** SHA-256 of the lines of a recording, as hexadecimal digits. */
export function contentHash(text: string): string {
  return createHash('sha256').update(text).digest('hex')
}

/** A recording as the text of its file. */
export function linesOf(recording: Recording): string {
  return [...eachLine(recording)].join('')
}

function* eachLine({ header, lines }: Recording): Generator<string, void> {
  for (const line of [header, ...lines]) yield `${JSON.stringify(line)}\n`
}

/** The same, some lines at once, so that whatever else runs in the program gets its turn. */
export async function linesInSlices(recording: Recording): Promise<string> {
  const texts: string[] = []
  await inSlices(eachLine(recording), (text) => texts.push(text))
  return texts.join('')
}

async function readLines(text: string): Promise<Recording> {
  const recording = await readRecordingInSlices(text, () => new Promise((go) => setImmediate(go)))
  if (recording.lines.length === 0) throw new ImportRefusal('no-rows', null)
  return recording
}

async function csvOf(text: string, title: string, match: CsvMatch | null, preview: ImportPreview): Promise<Recording> {
  preview.kind = 'csv'
  const separator = match?.separator ?? separatorOf(text)
  const csv = await inSlices(openCsv(text, separator))
  const way = match?.columns.length === csv.header.length ? match : guessMatch(csv, separator)
  preview.csv = { match: way, header: csv.header, sample: sampleOf(csv) }
  return inSlices(recordingOf(csv, way, title))
}

function textOf(bytes: Uint8Array): string {
  let plain = bytes
  if (bytes[0] === 0x1f && bytes[1] === 0x8b) {
    try {
      plain = gunzipSync(bytes, { maxOutputLength: largestPlainBytes })
    } catch (problem) {
      throw new ImportRefusal((problem as { code?: string }).code === 'ERR_BUFFER_TOO_LARGE' ? 'too-large' : 'damaged', null)
    }
  }
  if (plain.length === 0) throw new ImportRefusal('empty', null)
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(plain)
  } catch {
    throw new ImportRefusal('not-text', null)
  }
}

function count(preview: ImportPreview, lines: readonly RecordingLine[]): void {
  for (const line of lines) {
    const at = Date.parse(line.at)
    preview.from = Math.min(preview.from ?? at, at)
    preview.to = Math.max(preview.to ?? at, at)
    if ('topic' in line) preview.readings++
    if ('action' in line) preview.acts++
  }
}
