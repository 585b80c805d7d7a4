// npm run bad-input: the figures of bad input (reliability 11.3), each with its target and what was reached; status 1 when one falls short. What is
// under load (crowds, floods, memory of strangers) has commands of its own, see tests/faults/FAULTS.md. About three minutes.
import { readdirSync, readFileSync } from 'node:fs'
import { basename } from 'node:path'
import { filesNamedIn, rowsOf, testsNamedIn, unheld } from './answers.mjs'
import { runTests } from './vitest-json.mjs'
import { explained } from '../explained.mjs'

explained(import.meta.url)

const statementsFile = 'tests/integration/mqtt/STATEMENTS.md'
const statements = rowsOf(statementsFile, /^\d+\.\d+\.\d+-\d+$/)
const { tests, said } = runTests(
  [
    ...filesNamedIn(statements.map(([, , held]) => held)),
    'tests/integration/mqtt/packet-sequences.test.ts',
    'tests/integration/mqtt/mutated.test.ts',
    'tests/integration/corpora',
    'tests/integration/security/box.test.ts',
    'tests/unit/domain/intake/bad',
  ],
  { NAUGHTY_STEP: '1', MUTATED: '100000' },
)
const of = (file, title = /./) => tests.filter((test) => basename(test.file) === file && title.test(test.fullName))
const passed = (found) => found.filter(({ status }) => status === 'passed').length
let short = 0
function tell(figure, target, reached, met) {
  if (!met) short++
  console.log(`${met ? 'ok   ' : 'SHORT'} ${figure}: ${reached} (target: ${target})`)
}

const [, fits = '0', of3 = '0'] = /3\.1 and 3\.1\.1: (\d+) of (\d+) as expected/.exec(said) ?? []
tell('packet sequences of MQTT 3.1 and 3.1.1', '265 of 273, each deviation explained', `${fits} of ${of3}`, Number(fits) >= 265)

const folder = 'tests/corpora/mqtt-packet-sequences/'
const sequences = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .flatMap((file) => JSON.parse(readFileSync(folder + file, 'utf8')).flatMap((group) => group.tests))
const alive = passed(of('packet-sequences.test.ts')) === 2
tell('all sequences, the next good client served after each', '1483', alive ? sequences.length : 0, alive && sequences.length === 1483)

const ten = of('interoperability.test.ts')
tell(
  'subjects of interoperability (Paho), written anew',
  '10 of 10',
  `${passed(ten)} of ${ten.length}`,
  passed(ten) >= 10 && passed(ten) === ten.length,
)

const loose = statements.flatMap(([id, , held]) => unheld(held, tests).map((what) => `${id} ${what}`))
const byTest = statements.filter(([, , held]) => testsNamedIn(held).length > 0)
const byReason = statements.filter(([, , held]) => /^none: \S/.test(held))
for (const line of loose) console.log(`      ${line}`)
tell(
  'statements of MQTT 3.1.1, Appendix B',
  '141 of 141 with a test or a reason',
  `${byTest.length} by tests, ${byReason.length} by a reason`,
  loose.length === 0 && new Set(statements.map(([id]) => id)).size === 141 && byTest.length + byReason.length === 141,
)

const mutated = of('mutated.test.ts')
const [figure = 'not run'] = /\d+, \d+ hung, memory [+-]?\d+ MB/.exec(said) ?? []
tell('changed packets at the broker', '100000, 0 hung, memory +50 MB at most', figure, figure.startsWith('100000') && passed(mutated) === 1)
const pure = of('gate.test.ts', /survives 100,000 packets/)
tell('changed packets at the gate alone', '100000', passed(pure) === 1 ? '100000' : 'failed', passed(pure) === 1)

const suite = of('json-suite.test.ts')
tell(
  'JSON suite at three doors',
  '318 × 3',
  `318 × ${passed(suite)}`,
  passed(suite) === 3 && suite.some(({ title }) => title.includes('318')),
)

const cases = of('cases.test.ts', /class \d+/)
tell(
  'own cases of SenML and JSON, each with its outcome',
  '300 or more',
  `${passed(cases)} of ${cases.length}`,
  passed(cases) >= 300 && passed(cases) === cases.length,
)

const fields = of('naughty-strings.test.ts')
const count = fields.filter(({ status }) => status === 'passed').flatMap(({ title }) => title.match(/\d+(?=[: ]| and)/g) ?? []).length
const shown = of('box.test.ts', /S29/)
tell(
  'naughty strings',
  '515 × 8 fields, 2 of them in a browser',
  `515 × ${count} fields, ${passed(shown) === shown.length && shown.length === 2 ? 2 : 0} in a browser`,
  count === 8 && passed(fields) === fields.length && passed(shown) === 2 && shown.length === 2,
)

const poison = of('embedded.test.ts', /poisoned message off its sender/)
tell('times that a refused reading is sent again', '1 at most', passed(poison) === 1 ? '0' : 'more', passed(poison) === 1)

for (const { status, fullName, why } of tests) if (status === 'failed') console.log(`      failed: ${fullName} ${why}`)
console.log(short === 0 ? 'bad input: every figure is met' : `bad input: ${short} figures fall short`)
process.exitCode = short === 0 && tests.every(({ status }) => status !== 'failed') ? 0 : 1
