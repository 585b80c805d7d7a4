// npm run security: the 36 checks of the handbook (reliability, 6) by number, then what OWASP ASVS 5.0 and ETSI EN 303 645 ask, as answered in
// tests/integration/security/ASVS.md and ETSI.md; status 1 when one is missing or fails, or a figure of 11.4 is missed.
import { filesNamedIn, rowsOf, testsNamedIn, unheld } from './answers.mjs'
import { runTests } from './vitest-json.mjs'
import { explained } from '../explained.mjs'

explained(import.meta.url)

const checks = 36
const folder = 'tests/integration/security'
const asvs = rowsOf(`${folder}/ASVS.md`, /^V\d+\.\d+\.\d+$/).map(([id, level, , answer, by]) => ({ id, level: Number(level), answer, by }))
const etsi = rowsOf(`${folder}/ETSI.md`, /^5\.\d+$/).map(([id, , answer, by]) => ({ id, level: 0, answer, by }))
const { tests } = runTests([folder, ...filesNamedIn([...asvs, ...etsi].map(({ by }) => by))])
let passed = 0
for (let number = 1; number <= checks; number++) {
  const found = tests.filter(({ title }) => title.startsWith(`S${number} `))
  const fine = found.length > 0 && found.every(({ status }) => status === 'passed')
  if (fine) passed++
  const state = fine ? 'ok     ' : found.length === 0 ? 'MISSING' : 'FAILED '
  console.log(`S${String(number).padEnd(3)}${state} ${found.map(({ title }) => title.replace(/^S\d+ /, '')).join(' / ')}`)
}
for (const { title, status, why } of tests) if (!/^S\d+ /.test(title) && status !== 'passed') console.log(`also failed: ${title} ${why}`)
console.log(`\n${passed} of ${checks} security checks`)

let short = 0
function tell(figure, target, reached, met) {
  if (!met) short++
  console.log(`${met ? 'ok   ' : 'SHORT'} ${figure}: ${reached} (target: ${target})`)
}
const answers = ['met', 'n/a', 'exception']
const loose = [...asvs, ...etsi].flatMap(({ id, answer, by }) => [
  ...unheld(by, tests).map((what) => `${id} ${what}`),
  ...(answers.includes(answer) ? [] : [`${id}: no answer`]),
  // what is not met must say why; what is met must be held by something
  ...(by === '' || (answer === 'exception' && by.replaceAll(/`[^`]*`: [^;]+(; )?/g, '').trim() === '') ? [`${id}: no reason`] : []),
])
for (const line of loose) console.log(`      ${line}`)
const held = ({ id, by }) => testsNamedIn(by).length > 0 && !loose.some((line) => line.startsWith(`${id} `))
const count = (rows, answer) => rows.filter((row) => row.answer === answer).length
const one = asvs.filter(({ level }) => level === 1)
const two = asvs.filter(({ level }) => level === 2)
/** Requirements of level 1 by section, as the standard has them: a row that was forgotten shows. */
const levelOne =
  '1.2:5 1.3:2 1.5:1 2.1:1 2.2:2 2.3:1 3.2:2 3.3:1 3.4:2 3.5:3 4.1:1 4.4:1 5.2:2 5.3:2 6.1:1 6.2:8 6.3:2 6.4:2 7.2:4 7.4:2 8.1:1 8.2:2 8.3:1 9.1:3 9.2:1 10.4:5 11.3:2 11.4:1 12.1:1 12.2:2 13.4:1 14.2:1 14.3:1 15.1:1 15.2:1 15.3:1'
const sections = new Map()
for (const { id } of one) {
  const section = id.replace(/^V(\d+\.\d+)\.\d+$/, '$1')
  sections.set(section, new Set([...(sections.get(section) ?? []), id]))
}
const whole = levelOne.split(' ').every((part) => sections.get(part.split(':')[0])?.size === Number(part.split(':')[1]))
tell(
  'OWASP ASVS 5.0, level 1',
  '70 of 70 answered',
  `${one.length} of 70: ${count(one, 'met')} met, ${count(one, 'n/a')} not applicable, ${count(one, 'exception')} exceptions`,
  whole && one.length === 70 && loose.length === 0,
)
const byTest = one.filter(held)
tell(
  'of them held by a test',
  '45 or more',
  `${byTest.length}: ${count(byTest, 'met')} met, ${count(byTest, 'n/a')} that have nothing it could apply to, ${count(byTest, 'exception')} exceptions whose rest is tested`,
  byTest.length - count(byTest, 'exception') >= 45,
)
tell(
  'OWASP ASVS 5.0, level 2, met',
  '60 or more',
  `${count(two, 'met')}, ${two.filter((row) => row.answer === 'met' && held(row)).length} by a test`,
  count(two, 'met') >= 60,
)
tell(
  'ETSI EN 303 645, headings answered',
  '13',
  `${etsi.length}: ${count(etsi, 'met')} met, ${count(etsi, 'exception')} exceptions`,
  new Set(etsi.map(({ id }) => id)).size === 13,
)
process.exitCode = passed === checks && short === 0 && tests.every(({ status }) => status !== 'failed') ? 0 : 1
