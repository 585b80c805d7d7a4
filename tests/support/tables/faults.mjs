// npm run faults (-- --short | --release) (--keep) (--only NAME,...): the faults of tests/faults/FAULTS.md by number, or those of some of the
// files; status 1 when one falls short.
import { spawnSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { runTests } from './vitest-json.mjs'
import { explained } from '../explained.mjs'

explained(import.meta.url, ['--short', '--release', '--keep', '--only'])

const long = {
  LONG: '1',
  PARTITIONS: '20',
  KILLS: '100',
  POWER_CUTS: '60',
  FLIPS: '300',
  FAULT_CALLS: '1-20,26-200/6',
  CRASH_STATES: '20000',
}
const release = {
  ...long,
  PARTITIONS: '500',
  KILLS: '2000',
  POWER_CUTS: '1000',
  FLIPS: '10000',
  FAULT_CALLS: '1-200',
  CRASH_STATES: '500000',
}
const form = process.argv.includes('--short') ? {} : process.argv.includes('--release') ? release : long
const files = [
  'tests/faults',
  'tests/integration/mqtt',
  'tests/integration/app/program.test.ts',
  'tests/unit/storage/migrate.test.ts',
  'tests/unit/mqtt/gate',
  'tests/unit/domain/intake/time.test.ts',
]
const only = process.argv.includes('--only') ? (process.argv[process.argv.indexOf('--only') + 1] ?? '').split(',') : files
const { tests, said } = runTests(only, form)
/** Of tests that name none: what their whole file is about (FAULTS.md). */
const ofFile = { 'power-cut': [2], traced: [6, 7], 'bit-flips': [10], outside: [16, 17], migrate: [31], time: [24] }
/** Of single tests that name none, in files about other things. */
const ofTitle = [
  [15, /port is taken/],
  [20, /byte by byte|waits only so long for a CONNECT|whatever the cuts between the bytes/],
  [30, /slows a flood down|duel of two nodes/],
]
function numbersOf({ file, fullName }) {
  const named = [...new Set([...fullName.matchAll(/\bF(\d+)\b/g)].map(([, number]) => Number(number)))]
  for (const [number, title] of ofTitle) if (title.test(fullName)) named.push(number)
  return named.length > 0 ? named : (ofFile[/([^/]+)\.test\.ts$/.exec(file)?.[1] ?? ''] ?? [])
}
const words = { passed: 'ok', failed: 'SHORT', skipped: 'not here', pending: 'not here' }
const rows = tests
  .map((test) => ({ ...test, numbers: numbersOf(test) }))
  .filter(({ numbers, status }) => numbers.length > 0 || status === 'failed')
  .sort((a, b) => (a.numbers[0] ?? 99) - (b.numbers[0] ?? 99))
for (const { numbers, status, title, seconds, why } of rows) {
  const which = numbers.map((number) => `F${number}`).join(' ') || '-'
  console.log(
    `${which.padEnd(9)}${(words[status] ?? status).padEnd(9)}${seconds.toFixed(1).padStart(7)} s  ${title}${status === 'failed' ? `: ${why}` : ''}`,
  )
}
const figures = said.split('\n').filter((line) => !/[✓×❯]/.test(line) && /\b(lost|half|unnoticed|states|cuts|kills)\b/.test(line))
if (figures.length > 0) console.log(`\n${figures.join('\n')}`)
const clocks = rows.filter(({ numbers, status }) => status === 'passed' && (numbers.includes(24) || numbers.includes(25))).length
if (only === files) console.log(`\nclock scenarios: ${clocks} (target: 12 or more)`)
const short = tests.filter(({ status }) => status === 'failed').length
console.log(
  `\n${new Set(rows.filter(({ status }) => status === 'passed').flatMap(({ numbers }) => numbers)).size} numbered faults survived, ${short} tests fell short`,
)
process.exitCode = short > 0 || rows.length === 0 || (only === files && clocks < 12) ? 1 : 0

/** Into the last column of FAULTS.md, by the numbers of the first. */
function keep() {
  const file = 'tests/faults/FAULTS.md'
  const resultOf = (numbers) => {
    const found = rows.filter((row) => row.numbers.some((number) => numbers.includes(number)))
    if (found.length === 0) return null
    const bad = found.filter(({ status }) => status === 'failed').length
    const absent = found.filter(({ status, title }) => status === 'skipped' || /said here so that nobody/.test(title)).length
    return bad > 0 ? `${bad} of ${found.length} fell short` : absent > 0 ? `not here: ${absent} of ${found.length}` : `ok, ${found.length}`
  }
  const lines = readFileSync(file, 'utf8')
    .split('\n')
    .map((line) => {
      const cells = /^\| F\d/.test(line) ? line.split('|') : []
      const result = resultOf([...(cells[1] ?? '').matchAll(/F(\d+)/g)].map(([, number]) => Number(number)))
      return cells.length === 7 && result !== null ? [...cells.slice(0, 5), ` ${result} `, ''].join('|') : line
    })
  writeFileSync(file, lines.join('\n'))
  spawnSync('npx', ['prettier', '--config', 'tests/config/prettier.json', '--write', file])
}
if (process.argv.includes('--keep')) keep()
