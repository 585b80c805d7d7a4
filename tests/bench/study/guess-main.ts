// What the forecasts of recorded firings are worth beside a constant guess: npm run study-guess -- FOLDER [--each]
// FOLDER holds recordings with a truth file beside each, as `npm run worlds -- FOLDER --as recording` writes them; --each tells every firing.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { kilnFold } from '../../../server/domain/firing/fold.ts'
import { intakeFold } from '../../../server/domain/intake/fold.ts'
import { play } from '../../../server/recordings/play.ts'
import { readRecording } from '../../../server/recordings/read.ts'
import { asked } from '../asked.ts'
import { compared, forecastLines } from './guess.ts'
import { type Ahead, forecastCalls } from './score.ts'

const usage = `Usage: npm run study-guess -- FOLDER [--each]
Tells what the forecasts of recorded firings are worth beside a constant guess.`
const { values, positionals } = asked(usage, () =>
  parseArgs({ allowPositionals: true, options: { each: { type: 'boolean', default: false } } }),
)
const [folder] = positionals
const ending = /\.jsonl(\.gz)?$/
if (!folder) {
  console.error(usage)
  process.exit(2)
}

interface Truth {
  lit: string
  best: { from: string | null; to: string | null }
  sealDue: string | null
}

/** The ranges that a replay of one recording tells before their call was really due; hours after lighting. */
function aheadIn(file: string, firing: string): Ahead[] {
  const truth = JSON.parse(readFileSync(file.replace(ending, '.truth.json'), 'utf8')) as Truth
  const hours = (time: unknown): number => (Date.parse(String(time)) - Date.parse(truth.lit)) / 3_600_000
  const real = { 'start-collecting': truth.best.from, 'stop-collecting': truth.best.to, seal: truth.sealDue }
  const ahead: Ahead[] = []
  for (const line of play({ intake: intakeFold, kiln: kilnFold }, readRecording(readFileSync(file)))) {
    const call = forecastCalls.find((one) => line.event === 'forecast' && one === line['call'])
    const due = call === undefined ? null : real[call]
    if (call === undefined || due === null || hours(line.at) >= hours(due)) continue
    ahead.push({
      firing,
      call,
      at: hours(line.at),
      earliest: hours(line['earliest']),
      latest: hours(line['latest']),
      real: hours(due),
    })
  }
  return ahead
}

const all: Ahead[] = []
for (const name of readdirSync(folder)
  .filter((one) => ending.test(one))
  .sort())
  all.push(...aheadIn(join(folder, name), name.replace(ending, '')))
if (values.each)
  for (const { firing, told, inside, own, inHindsight, fromOthers } of compared(all).firings)
    console.log(
      `${firing.padEnd(24)} told ${String(told).padStart(4)}, inside ${String(inside).padStart(4)}: ${own.toFixed(0).padStart(4)} min, constant ${inHindsight.toFixed(0)}, from the others ${fromOthers.toFixed(0)}`,
    )
console.log(forecastLines(all).join('\n'))
