/** What `parse` reads from the command line; ends with the usage where that is asked for (status 0), with one sentence where a word is not understood (2). */
export function asked<T>(usage: string, parse: () => T): T {
  const words = process.argv.slice(2)
  if (words.includes('--help') || words.includes('-h')) {
    console.log(usage)
    process.exit(0)
  }
  try {
    return parse()
  } catch (problem) {
    if (!String((problem as NodeJS.ErrnoException).code).startsWith('ERR_PARSE_ARGS')) throw problem
    // Node's second sentence is about words that begin with a dash
    console.error(`${(problem as Error).message.split('. ')[0] ?? ''}: see --help`)
    process.exit(2)
  }
}
