// npm run faults (-- --short): the faults of tests/faults/FAULTS.md by number; status 1 when one falls short.
import { runTests } from './vitest-json.mjs'

const long = {
  LONG: '1',
  PARTITIONS: '20',
  KILLS: '100',
  POWER_CUTS: '60',
  FLIPS: '300',
  FAULT_CALLS: '1-20,26-200/6',
  CRASH_STATES: '20000',
}
const files = [
  'tests/faults',
  'tests/integration/mqtt',
  'tests/integration/app/program.test.ts',
  'tests/unit/storage/migrate.test.ts',
  'tests/unit/mqtt/gate',
]
const { tests, said } = runTests(files, process.argv.includes('--short') ? {} : long)
/** Of tests that name none: what their whole file is about (FAULTS.md). */
const ofFile = { 'power-cut': [2], traced: [6, 7], 'bit-flips': [10], outside: [16, 17], migrate: [31] }
function numbersOf({ file, fullName }) {
  const named = [...new Set([...fullName.matchAll(/\bF(\d+)\b/g)].map(([, number]) => Number(number)))]
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
const figures = said.split('\n').filter((line) => /\b(lost|unnoticed|states|cuts|kills)\b/.test(line))
if (figures.length > 0) console.log(`\n${figures.join('\n')}`)
const short = tests.filter(({ status }) => status === 'failed').length
console.log(
  `\n${new Set(rows.filter(({ status }) => status === 'passed').flatMap(({ numbers }) => numbers)).size} numbered faults survived, ${short} tests fell short`,
)
process.exitCode = short > 0 || rows.length === 0 ? 1 : 0
