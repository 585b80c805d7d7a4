import { mkdtempSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { tmpdir } from 'node:os'
import type { CurvePoint } from '../../../server/storage/store.ts'
import { createSqliteStore } from '../../../server/storage/sqlite/store.ts'

// A 33-hour firing at 1 Hz in three series among FIRINGS others of 5 s, each curve asked for the first time and again.

const [program = '', others = '20'] = process.argv.slice(2)
const folder = mkdtempSync(join(tmpdir(), 'kiln-curve-'))
const store = createSqliteStore({ folder, program, ballastBytes: 1 << 20 })
await store.start()
const hours = 33
const roles = ['firebox', 'wall', 'outlet'] as const

async function fill(firing: string, stepS: number): Promise<number> {
  let count = 0
  let batch: CurvePoint[] = []
  for (let s = 0; s < hours * 3600; s += stepS) {
    for (const role of roles) batch.push({ role, t: s * 1000, value: 20 + ((s * 7) % 501) / 3 })
    if (batch.length >= 6000) {
      await store.savePoints(firing, batch)
      count += batch.length
      batch = []
    }
  }
  await store.savePoints(firing, batch)
  return count + batch.length
}

let stored = await fill('long', 1)
for (let n = 0; n < Number(others); n++) stored += await fill(`other-${n}`, 5)
console.log(`${stored} points stored`)

/** Reliability 11.1. */
const mostMs = 300
const timed = async (what: string, run: () => Promise<unknown>) => {
  const began = performance.now()
  const cpu = process.cpuUsage()
  await run()
  const { user, system } = process.cpuUsage(cpu)
  const tookMs = performance.now() - began
  if (what !== 'warm-up' && tookMs > mostMs) process.exitCode = 1
  console.log(`${what}: ${tookMs.toFixed(1)} ms, of it processor ${((user + system) / 1000).toFixed(1)} ms`)
}
await timed('warm-up', () => store.firings())
for (const time of ['first', 'again']) {
  await timed(`33 h of 1 Hz, about 1000 points a series, ${time}`, () => store.curve('long', 0, hours * 3_600_000, 1000))
  await timed(`33 h of 5 s, ${time}`, () => store.curve('other-0', 0, hours * 3_600_000, 1000))
  await timed(`8 h of 1 Hz, ${time}`, () => store.curve('long', 3_600_000, 9 * 3_600_000, 1000))
  await timed(`1 h of 1 Hz, ${time}`, () => store.curve('long', 3_600_000, 2 * 3_600_000, 1000))
}
await store.stop()
rmSync(folder, { recursive: true })
