import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

/**
 * A program's own first comment answers `--help` (status 0). A word with two dashes that it does not know ends it with one sentence (status
 * 2): a check that passes over a mistyped word tells that nothing was found.
 * @param url `import.meta.url` of the program
 * @param known its words that begin with two dashes
 * @returns the words that it was called with
 */
export function explained(url, known = []) {
  const words = process.argv.slice(2)
  if (words.includes('--help') || words.includes('-h')) {
    const lines = readFileSync(fileURLToPath(url), 'utf8').split('\n')
    const comment = lines.slice(
      0,
      lines.findIndex((line) => !line.startsWith('//')),
    )
    console.log(comment.map((line) => line.slice(3)).join('\n'))
    process.exit(0)
  }
  const strange = words.find((word) => word.startsWith('--') && !known.includes(word.split('=')[0]))
  if (strange !== undefined) {
    console.error(`'${strange}' is no word of this program: see --help`)
    process.exit(2)
  }
  return words
}
