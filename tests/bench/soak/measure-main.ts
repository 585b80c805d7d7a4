import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import mqtt, { type MqttClient } from 'mqtt'
import { openDatabase } from '../../../server/storage/sqlite/engine.ts'
import { startProgram } from '../../support/program.ts'

// The whole built service under the load of a yard, first as it is expected, then ten times as much. Arguments: minutes of each.
// Figures: reliability 11.1.

const [fieldMin = 1, soakMin = 10] = process.argv.slice(2).map(Number)
const nodes = 10
const channels = ['firebox', 'wall', 'outlet', 'smoke', 'ambient', 'core']
const ticksAS = 100 // of the kernel's clock, proc(5)

const data = mkdtempSync(join(tmpdir(), 'soak-'))
const program = await startProgram(data)
const pid = program.child.pid ?? 0

/** User and system seconds of all threads. */
function cpuS(): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? []
  return (Number(fields[11]) + Number(fields[12])) / ticksAS
}
const rssMb = (): number => Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024

const clients: MqttClient[] = []
for (let n = 1; n <= nodes; n++) {
  clients.push(await mqtt.connectAsync(`mqtt://127.0.0.1:${program.mqttPort}`, { clientId: `n${n}`, reconnectPeriod: 0 }))
}
const seqs = new Map<number, number>()
let sent = 0
let acknowledged = 0

async function load(minutes: number, hz: number): Promise<{ cpuPct: number; rss: number[]; p99Ms: number }> {
  const waits: number[] = []
  const rss: number[] = []
  const cpuBefore = cpuS()
  const began = performance.now()
  const end = began + minutes * 60_000
  for (let round = 0; performance.now() < end; round++) {
    for (const [index, client] of clients.entries()) {
      const node = `n${index + 1}`
      const seq = (seqs.get(index) ?? 0) + 1
      seqs.set(index, seq)
      const up = (performance.now() - began) / 1000
      const records = channels.map((n, place) => ({ n, v: Math.round((20 + place * 10 + Math.sin(round / 50) * 3) * 4) / 4 }))
      const pack = [
        { bn: `yard/${node}/`, bu: 'Cel', t: 0, ...records[0] },
        ...records.slice(1),
        ...[
          { n: 'boot', u: 'count', v: hz },
          { n: 'seq', u: 'count', v: seq },
          { n: 'up', u: 's', v: up },
        ],
      ]
      const at = performance.now()
      sent++
      client.publish(`firing/1/yard/${node}/readings`, JSON.stringify(pack), { qos: 1 }, (error) => {
        if (error) return
        acknowledged++
        waits.push(performance.now() - at)
      })
    }
    if (round % (5 * hz) === 0) rss.push(rssMb())
    await pause(Math.max(0, began + ((round + 1) * 1000) / hz - performance.now()))
  }
  const seconds = (performance.now() - began) / 1000
  waits.sort((a, b) => a - b)
  return { cpuPct: ((cpuS() - cpuBefore) / seconds) * 100, rss, p99Ms: waits[Math.floor(waits.length * 0.99)] ?? NaN }
}

/** Median of the last fifth against that of the fifth after the first half: what is left once the heap has settled. */
function grownMb(rss: readonly number[]): number {
  const median = (part: readonly number[]) => part.toSorted((a, b) => a - b)[part.length >> 1] ?? NaN
  const fifth = Math.max(1, Math.floor(rss.length / 5))
  const half = rss.length >> 1
  return median(rss.slice(-fifth)) - median(rss.slice(half, half + fifth))
}

await load(0.25, 10) // the compiler's first work is over
const field = await load(fieldMin, 1)
const soak = await load(soakMin, 10)
for (let waits = 0; acknowledged < sent && waits < 200; waits++) await pause(50)
for (const client of clients) await client.endAsync(true)
program.child.kill('SIGTERM')
await program.ended
const database = openDatabase(join(resolve(data), 'kiln.db'), 'read')
const stored = Number(database.prepare("SELECT count(*) AS n FROM journal WHERE topic LIKE '%/readings'").get()?.['n'])
database.close()
rmSync(data, { recursive: true })

let missed = 0
function figure(what: string, value: number, unit: string, most: number): void {
  const met = value <= most
  if (!met) missed++
  console.log(`${what.padEnd(64)} ${value.toFixed(1).padStart(8)} ${unit.padEnd(14)} target at most ${most}: ${met ? 'met' : 'MISSED'}`)
}
figure(`processor at 60 readings/s, ${fieldMin} min`, field.cpuPct, '% of a core', 10)
figure('memory then', field.rss.at(-1) ?? NaN, 'MB', 150)
figure(`acknowledgement at 600 readings/s, 99th percentile, ${soakMin} min`, soak.p99Ms, 'ms', 50)
figure('memory gained in the second half of it', grownMb(soak.rss), 'MB', 5)
figure(`acknowledged packs that are not stored, of ${acknowledged}`, Math.max(0, acknowledged - stored), '', 0)
process.exitCode = missed > 0 ? 1 : 0
