import { readdirSync, readFileSync } from 'node:fs'
import { basename, join } from 'node:path'

/** Rows of the first table of a Markdown file whose first cell looks like `id`, as lists of cells. */
export function rowsOf(file, id) {
  return readFileSync(file, 'utf8')
    .split('\n')
    .filter((line) => line.startsWith('|'))
    .map((line) =>
      line
        .split(/(?<!\\)\|/)
        .slice(1, -1)
        .map((cell) => cell.trim().replace(/\\([_|*#<])/g, '$1')),
    )
    .filter(([first]) => id.test(first))
}

/** The tests that a cell names: `` `file.test.ts`: beginning of its name``, several between semicolons. */
export const testsNamedIn = (cell) =>
  [...cell.matchAll(/`([\w-]+\.test\.ts)`: ([^;]+)/g)].map(([, file, title]) => ({ file, title: title.trim() }))

const all = readdirSync('tests', { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.test.ts'))

/** Every file of that name, wherever it is. */
export const filesNamedIn = (cells) => {
  const names = new Set(cells.flatMap((cell) => testsNamedIn(cell).map(({ file }) => file)))
  return all.filter((file) => names.has(basename(file))).map((file) => join('tests', file))
}

/** Of the named tests those that are missing, or did not pass. @param tests as `runTests` gives them */
export function unheld(cell, tests) {
  return testsNamedIn(cell).flatMap(({ file, title }) => {
    // S1 is not S10
    const found = tests.filter((test) => basename(test.file) === file && startsSomewhere(test.fullName, title))
    const bad = found.filter(({ status }) => status !== 'passed')
    if (found.length > 0 && bad.length === 0) return []
    return [`${file}: ${title} (${found.length === 0 ? 'no such test' : `${bad.length} of ${found.length} did not pass`})`]
  })
}

function startsSomewhere(name, title) {
  const at = name.indexOf(title)
  return at >= 0 && !/^[0-9A-Za-z]/.test(name.slice(at + title.length))
}
