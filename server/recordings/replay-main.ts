import { readFileSync, writeSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { kilnFold } from '../domain/firing/fold.ts'
import { intakeFold } from '../domain/intake/fold.ts'
import { sentenceOf } from './account.ts'
import { originVersion } from '../runtime/origin.ts'
import { play } from './play.ts'
import { readRecording, RecordingProblem } from './read.ts'
import type { Recording } from './read.ts'
import { words } from './words/en.ts'

const usage = `Usage: npm run --silent replay -- FILE [--json]
Plays a recorded firing (.jsonl or .jsonl.gz) by its own times and tells what the service would have told.
  --json   one JSON object a line, nothing else
  --help   this text`

function fail(message: string): never {
  writeSync(2, `${message}\n`)
  process.exit(2)
}

function open(file: string): Recording {
  try {
    return readRecording(readFileSync(file))
  } catch (problem) {
    if (problem instanceof RecordingProblem) return fail(`${file}: no recording: ${problem.message}`)
    return fail(`${file}: cannot be read (${(problem as NodeJS.ErrnoException).code ?? 'unknown reason'})`)
  }
}

/** Written whole and in order even into a pipe that is read slowly. */
function print(text: string): void {
  const bytes = Buffer.from(text)
  for (let done = 0; done < bytes.length;) {
    try {
      done += writeSync(1, bytes, done)
    } catch (problem) {
      const { code } = problem as NodeJS.ErrnoException
      if (code === 'EPIPE') process.exit(0)
      if (code !== 'EAGAIN') throw problem
    }
  }
}

function argumentsOf(): { file: string; json: boolean } {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { json: { type: 'boolean' }, help: { type: 'boolean', short: 'h' } },
    })
    if (values.help) {
      print(`${usage}\n`)
      process.exit(0)
    }
    const [file, ...more] = positionals
    if (file === undefined || more.length > 0) return fail(usage)
    return { file, json: values.json ?? false }
  } catch (problem) {
    return fail(`${(problem as Error).message}\n${usage}`)
  }
}

const { file, json } = argumentsOf()
const recording = open(file)
const folds = { intake: intakeFold, kiln: kilnFold }
const { start } = recording.header
if (start && start.version !== originVersion(folds))
  writeSync(2, `${file}: recorded with another version of the folds, played from fresh ones\n`)
let page = json ? '' : `${words.times}\n`
for (const line of play(folds, recording)) {
  const text = json ? JSON.stringify(line) : sentenceOf(line)
  if (text !== null) page += `${text}\n`
  if (page.length > 65_536) {
    print(page)
    page = ''
  }
}
print(page)
