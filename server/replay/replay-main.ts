import { readFileSync, writeSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { houseFolds } from '../runtime/house-folds.ts'
import { originVersion } from '../runtime/origin.ts'
import { configOf, play, playLines } from '../recordings/play.ts'
import { readRecording, RecordingProblem } from '../recordings/read.ts'
import type { Recording } from '../recordings/read.ts'
import { accountOf } from './account.ts'
import { gather } from './gather.ts'
import { languages, speechIn } from './words/speech.ts'
import type { Language } from './words/speech.ts'

const usage = `Usage: npm run --silent replay -- FILE [--json | --language en]
Plays a recorded firing (.jsonl or .jsonl.gz) by its own times and tells what the service would have told: an account to read, with a summary at its end.
  --json            one JSON object a line, nothing else
  --language CODE   of the readable account: en, es or th
  --help            this text`

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

function argumentsOf(): { file: string; json: boolean; language: Language } {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { json: { type: 'boolean' }, language: { type: 'string' }, help: { type: 'boolean', short: 'h' } },
    })
    if (values.help) {
      print(`${usage}\n`)
      process.exit(0)
    }
    const [file, ...more] = positionals
    if (file === undefined || more.length > 0) return fail(usage)
    const language = languages.find((one) => one === (values.language ?? 'en'))
    if (language === undefined) return fail(usage)
    return { file, json: values.json ?? false, language }
  } catch (problem) {
    // Node's second sentence is about words that begin with a dash
    return fail(`${(problem as Error).message.split('. ')[0] ?? ''}\n${usage}`)
  }
}

/** A line of JSON for each event as it comes. */
function printEvents(recording: Recording): void {
  let page = ''
  for (const line of play(houseFolds, recording)) {
    page += `${JSON.stringify(line)}\n`
    if (page.length > 65_536) {
      print(page)
      page = ''
    }
  }
  print(page)
}

const { file, json, language } = argumentsOf()
const recording = open(file)
const { start } = recording.header
if (start && start.version !== originVersion(houseFolds))
  writeSync(2, `${file}: recorded with another version of the folds, played from fresh ones\n`)
if (json) printEvents(recording)
else {
  const config = start?.config ?? configOf(recording.header)
  print(`${accountOf(gather(playLines(houseFolds, recording)), config, speechIn(language)).join('\n')}\n`)
}
