// npm test, npm run check: the stages, two at a time (common machines have two cores at least). Each is named with its seconds; of one that
// passes only its own account is printed, of one that fails everything. Ends with 1 when any failed.
import { spawn } from 'node:child_process'
import { stripVTControlCharacters } from 'node:util'

/** In the order in which they are begun: what takes longest first, so that the last one has no machine to itself. */
const stages = {
  build: { lane: 'tests', words: ['npm', 'run', '--silent', 'build'] },
  tests: { lane: 'tests', words: ['npm', 'run', '--silent', 'test:fast'], account: /^ *(Test Files|Tests|Duration) |^not (checked|run) / },
  types: { lane: 'check', words: ['npm', 'run', '--silent', 'types'] },
  lint: { lane: 'check', words: ['npm', 'run', '--silent', 'lint'] },
  format: { lane: 'check', words: ['npm', 'run', '--silent', 'format:check'] },
  unused: { lane: 'check', words: ['npm', 'run', '--silent', 'unused'] },
}

/** Both streams of a stage, as they came. @returns whether it passed */
function run(name, { words: [program, ...args], account }) {
  const began = performance.now()
  return new Promise((resolve) => {
    const child = spawn(program, args, { stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, FORCE_COLOR: '0', NO_COLOR: '1' } })
    const chunks = []
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => chunks.push(chunk))
    child.once('error', (error) => chunks.push(Buffer.from(error.message)))
    child.once('close', (status, signal) => {
      const text = stripVTControlCharacters(Buffer.concat(chunks).toString())
      const passed = status === 0
      const seconds = ((performance.now() - began) / 1000).toFixed(0)
      console.log(`${name}: ${passed ? 'passed' : `FAILED (${signal ?? status})`} after ${seconds} s`)
      if (!passed) console.log(text)
      else for (const line of text.split('\n')) if (account?.test(line)) console.log(line)
      resolve(passed)
    })
  })
}

/** The stages of a lane one after the other; one that failed keeps only the lane of the tests from going on. */
async function runLane(lane) {
  let passed = true
  for (const [name, stage] of Object.entries(stages)) {
    if (stage.lane !== lane) continue
    if (!passed && lane === 'tests') console.log(`${name}: not begun`)
    else passed = (await run(name, stage)) && passed
  }
  return passed
}

const lanes = process.argv[2] === 'check' ? ['check'] : ['tests', 'check']
const began = performance.now()
const passed = await Promise.all(lanes.map(runLane))
console.log(`${passed.every(Boolean) ? 'all passed' : 'FAILED'} after ${((performance.now() - began) / 1000).toFixed(0)} s`)
process.exitCode = passed.every(Boolean) ? 0 : 1
