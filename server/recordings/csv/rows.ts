import type { ImportProblem, ImportProblemCode } from '../../contract/imports.ts'

/** A record of a CSV file and the line of the file on which it begins. */
export interface Row {
  line: number
  cells: string[]
}

/** The file, or a line of it, can not be taken in. */
export class ImportRefusal extends Error {
  readonly problem: ImportProblem
  constructor(code: ImportProblemCode, line: number | null, found = '') {
    super(`${line === null ? 'file' : `line ${line}`}: ${code} ${found}`)
    this.name = 'ImportRefusal'
    this.problem = { code, line, found: found.slice(0, 80) }
  }
}

/**
 * Records of RFC 4180, section 2: quotes around a field, doubled inside one, line ends and separators allowed between them.
 * A bare line feed ends a record too, as spreadsheets write it; empty lines are passed over.
 * @throws ImportRefusal that names the line
 */
export function* rowsIn(text: string, separator: string): Generator<Row, void> {
  let place = text.startsWith('\ufeff') ? 1 : 0
  let line = 1
  while (place < text.length) {
    const row: Row = { line, cells: [] }
    for (let open = true; open;) {
      const field = fieldAt(text, place, separator, line)
      row.cells.push(field.value)
      line += field.lines
      place = field.end
      if (text[place] === separator) place++
      else open = false
    }
    if (text[place] === '\r') place++
    if (text[place] === '\n') place++
    line++
    if (row.cells.length > 1 || row.cells[0] !== '') yield row
  }
}

interface Field {
  value: string
  end: number
  /** Line ends inside it. */
  lines: number
}

function fieldAt(text: string, from: number, separator: string, line: number): Field {
  return text[from] === '"' ? quotedAt(text, from, separator, line) : bareAt(text, from, separator, line)
}

function bareAt(text: string, from: number, separator: string, line: number): Field {
  let end = from
  for (let sign = text[end]; sign !== undefined && sign !== separator && sign !== '\n' && sign !== '\r'; sign = text[++end]) {
    if (sign === '"') throw new ImportRefusal('stray-quote', line, text.slice(from, end + 20))
  }
  return { value: text.slice(from, end), end, lines: 0 }
}

function quotedAt(text: string, from: number, separator: string, line: number): Field {
  let value = ''
  let start = from + 1
  for (;;) {
    const quote = text.indexOf('"', start)
    if (quote < 0) throw new ImportRefusal('open-quote', line, text.slice(from, from + 40))
    value += text.slice(start, quote)
    if (text[quote + 1] !== '"') {
      const next = text[quote + 1]
      if (next !== undefined && next !== separator && next !== '\n' && next !== '\r')
        throw new ImportRefusal('stray-quote', line, text.slice(quote, quote + 20))
      return { value, end: quote + 1, lines: value.split(/\r\n|\n|\r/).length - 1 }
    }
    value += '"'
    start = quote + 2
  }
}

/** One record with its CRLF (RFC 4180, 2.1); quotes only where they are needed (2.6, 2.7). */
export function rowText(cells: readonly string[], separator: string): string {
  return `${cells.map((cell) => quoted(cell, separator)).join(separator)}\r\n`
}

function quoted(cell: string, separator: string): string {
  const needed = cell.includes(separator) || /["\r\n]/.test(cell) || cell !== cell.trim()
  return needed ? `"${cell.replaceAll('"', '""')}"` : cell
}

const formulaStart = /^[=+\-@\t\r]/

/** Words that a spreadsheet would take for a formula get an apostrophe before them; numbers are never passed through here. */
export function harmless(words: string): string {
  return formulaStart.test(words) || /^'+[=+\-@\t\r]/.test(words) ? `'${words}` : words
}

/** The words as they were before `harmless`. */
export function asWritten(cell: string): string {
  return /^'+[=+\-@\t\r]/.test(cell) ? cell.slice(1) : cell
}
