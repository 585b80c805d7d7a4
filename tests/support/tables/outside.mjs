// npm run outside: what yields, lots, dilution and plans are held against outside this house, check by check; status 1 below 60 or when one fails.
// The source of each stands beside it in its file; groups of our own rules are left out.
import { runTests } from './vitest-json.mjs'
import { explained } from '../explained.mjs'

explained(import.meta.url)

const least = 60
const ownRules =
  /refuses|names every|says what|says how|says achieved|has a bottle|is missing|never|takes the slowest|needs no firing|counts firings|before lighting/
const groups = {
  'moisture on both bases': 'yield/outside-figures',
  'kiln efficiency': 'yield/outside-figures',
  'charcoal against its end temperature': 'yield/outside-figures',
  'the heat that the condenser must take': 'yield/outside-figures',
  'what a charge lets expect': 'yield/outside-figures',
  'a charge counted in pieces': 'yield/outside-figures',
  density: 'lots/checks',
  'acidity by titration': 'lots/checks',
  'a lot against the council norm': 'lots/checks',
  'a lot against the other norms': 'lots/checks',
  'lump charcoal against EN 1860-2': 'lots/charcoal',
  'vinegar into a tank': 'dilution/dilution',
  'the table of rates': 'dilution/dilution',
  'the sun': 'plan/plan',
}
const files = [...new Set(Object.values(groups))].map((file) => `tests/unit/domain/${file}.test.ts`)
const { tests } = runTests(files)
let count = 0
for (const group of Object.keys(groups)) {
  const found = tests.filter(({ fullName, title }) => fullName === `${group} ${title}` && !ownRules.test(title))
  console.log(`${group}: ${found.length}`)
  for (const { title, status } of found) console.log(`  ${status === 'passed' ? 'ok     ' : 'FAILED '}${title}`)
  count += found.filter(({ status }) => status === 'passed').length
}
console.log(`\n${count} checks against outside figures (at least ${least})`)
process.exitCode = count >= least && tests.every(({ status }) => status === 'passed') ? 0 : 1
