// npm run bench:durable [-- [ROUNDS] [SECONDS] [NODES] [IN-FLIGHT]]
// Durable acknowledged readings a second of our path against bare parts, in turns in the same run; three readings in a message.
import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { bundle, storageWorker } from '../../support/bundle.mjs'
import { explained } from '../../support/explained.mjs'

explained(import.meta.url)

const [rounds = 3, seconds = 8, nodes = 50, inFlight = 20] = process.argv.slice(2).map(Number)
const readingsAMessage = 3
const warmUpS = 1.5
const programs = Object.fromEntries(['bare', 'ours', 'nodes'].map((name) => [name, `tests/bench/durable/${name}-main.ts`]))
const out = await bundle({ ...programs, ...storageWorker })

/** User and system time of all threads of a process (proc(5), fields 14 and 15; 100 ticks a second). */
function cpuSeconds(pid) {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1].split(' ')
  return (Number(fields[11]) + Number(fields[12])) / 100
}

async function measure(name) {
  const folder = mkdtempSync(join(resolve('.build'), 'bench-data-'))
  const server = spawn(process.execPath, [join(out, `${name}.js`), folder, join(out, 'storage-worker.js')], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const port = await new Promise((done) => server.stdout.on('data', (chunk) => done(/ready (\d+)/.exec(String(chunk))?.[1])))
  const cpuAtStart = cpuSeconds(server.pid)
  const load = spawn(process.execPath, [join(out, 'nodes.js'), port, nodes, inFlight, seconds].map(String), {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const said = await new Promise((done) => load.stdout.on('data', (chunk) => done(JSON.parse(String(chunk)))))
  said.cpuUs = ((cpuSeconds(server.pid) - cpuAtStart) / (said.perSecond * (seconds + warmUpS))) * 1e6
  const ended = new Promise((done) => server.once('exit', done))
  server.kill('SIGTERM')
  await ended
  rmSync(folder, { recursive: true })
  return said
}

const results = { bare: [], ours: [] }
for (let round = 0; round < rounds; round++) {
  for (const name of ['bare', 'ours']) {
    const { perSecond, p99Ms, cpuUs } = await measure(name)
    results[name].push(perSecond)
    console.log(
      `${name}: ${Math.round(perSecond)} messages/s, ${Math.round(perSecond * readingsAMessage)} readings/s, p99 ${p99Ms.toFixed(1)} ms, about ${cpuUs.toFixed(1)} us of processor a message`,
    )
  }
}
rmSync(out, { recursive: true })
const median = (values) => values.toSorted((a, b) => a - b)[values.length >> 1]
// by pairs: what else the machine does changes from round to round
const ratio = median(results.ours.map((perSecond, round) => perSecond / results.bare[round]))
console.log(`ours / bare parts, median of ${rounds} rounds: ${ratio.toFixed(2)} (target at least 0.8)`)
process.exitCode = ratio >= 0.8 ? 0 : 1
