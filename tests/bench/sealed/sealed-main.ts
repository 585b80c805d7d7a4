// Thousands of sealed phases in drums that share no code with server/domain/kiln, through the cooling part of the fold and its alarms.
// Of ten phases eight are drums of a third hand, one is of each family of server/simulator, sealed at random moments of whole firings.
// One night in four leaks; wall probes come off, slip, drift and fall silent; rain, sun, wind and changes of the weather go over it.
// The model of the kiln (the ensemble) takes no part: it can only hold an opening back, and what it says of leaks is not counted here.
import { parseArgs } from 'node:util'
import { asked } from '../asked.ts'
import { tellBehind } from './behind.ts'
import { runKiln, runPhase } from './run.ts'
import { tell, type Result } from './sums.ts'

const usage = `Usage: npm run sealed -- [--count 10000] [--first 0] [--core] [--behind KILNS]
Plays sealed phases through the cooling part of the fold and its alarms, and tells what was called and cried.
--core: a probe in the middle of the charge in every night, else in one of seventeen.
--behind: what the nights before it earn a night of the same kiln, in so many kilns from --first on, a third of each world.`
const { values } = asked(usage, () =>
  parseArgs({
    options: {
      count: { type: 'string', default: '10000' },
      first: { type: 'string', default: '0' },
      core: { type: 'boolean', default: false },
      behind: { type: 'string' },
    },
  }),
)
if (values.behind !== undefined) {
  const first = Number(values.first)
  const kilns = Array.from({ length: Number(values.behind) }, (_, i) => first + i)
  console.log(tellBehind(kilns.flatMap((kiln) => runKiln(kiln))))
  process.exit()
}
const core = values.core ? 'all' : 'some'
const results: Result[] = []
const first = Number(values.first)
const began = performance.now()
for (let n = first; n < first + Number(values.count); n++) {
  results.push(runPhase(n, core))
  if (process.stderr.isTTY && results.length % 100 === 0) process.stderr.write(`\r${results.length} phases`)
}
console.log(tell(results))
console.log(`${((performance.now() - began) / results.length).toFixed(0)} ms a phase`)
if (results.some((r) => r.unsafe !== null)) process.exitCode = 1
