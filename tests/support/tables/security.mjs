// npm run security: the 36 checks of the handbook (reliability, 6) by number; status 1 when one is missing or fails.
import { runTests } from './vitest-json.mjs'

const checks = 36
const { tests } = runTests(['tests/integration/security'])
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
process.exitCode = passed === checks && tests.every(({ status }) => status === 'passed') ? 0 : 1
