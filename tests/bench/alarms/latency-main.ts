// From the reading that makes an alarm to the sound of the buzzer, over the real broker: npm run bench:alarms -- --latency [ALARMS] [CONDITION...]
// The kiln's clock is stepped, so that delays of a minute cost none; the last second runs as it would live, and the time measured is the real one.
import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { bare } from './bare.ts'
import { Injector, type Heard } from './injector.ts'
import { startAround } from './around.ts'
import { summary } from './summary.ts'

interface Condition {
  readingsPerS: number
  tablets?: number
  backups?: boolean
  /** Every alarm comes in the second in which a checkpoint is made. */
  atCheckpoint?: boolean
  diskFull?: boolean
}

const conditions: Record<string, Condition> = {
  'one kiln': { readingsPerS: 60 },
  load: { readingsPerS: 2000 },
  tablets: { readingsPerS: 2000, tablets: 50 },
  checkpoint: { readingsPerS: 2000, atCheckpoint: true },
  backup: { readingsPerS: 2000, backups: true },
  'disk full': { readingsPerS: 2000, diskFull: true },
}

const [count = '1000', ...wanted] = process.argv.slice(2)
const alarms = Number(count)
const nodesOf = (readingsPerS: number): number => readingsPerS / 10

const smallName = /^small-(\d+)-/

/** What runs that were killed left behind: their folders bear the number of their process. */
function clearSmall(): void {
  for (const name of readdirSync(tmpdir())) {
    const owner = smallName.exec(name)?.[1]
    if (owner === undefined || existsSync(`/proc/${owner}`)) continue
    spawnSync('umount', [join(tmpdir(), name)])
    rmSync(join(tmpdir(), name), { recursive: true, force: true })
  }
}

/** A small file system that the load fills up within seconds; null where this user may not mount one. */
function mountSmall(): string | null {
  const folder = mkdtempSync(join(tmpdir(), `small-${process.pid}-`))
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=6m', 'tmpfs', folder]).status === 0) return folder
  rmSync(folder, { recursive: true })
  return null
}

function unmountSmall(folder: string): void {
  spawnSync('umount', [folder])
  rmSync(folder, { recursive: true, force: true })
}

/** 99th percentile of the computing, ms. */
function worst(took: readonly Heard[]): string {
  const spent = took.map(({ cpuMs }) => cpuMs).sort((a, b) => a - b)
  return (spent[Math.min(spent.length - 1, Math.floor(0.99 * spent.length))] ?? NaN).toFixed(1)
}

/** Reliability 11.5: none missed, 99th percentile, slowest. */
function isInTime(times: readonly (number | null)[]): boolean {
  const heard = times.filter((ms) => ms !== null).sort((a, b) => a - b)
  const p99 = heard[Math.min(heard.length - 1, Math.floor(0.99 * heard.length))] ?? Infinity
  return heard.length === times.length && p99 <= 100 && (heard.at(-1) ?? Infinity) <= 1000
}

async function measure(name: string, condition: Condition): Promise<string> {
  const small = condition.diskFull ? mountSmall() : null
  if (condition.diskFull && small === null) return `${name}: not measured, it needs root for a small tmpfs`
  const injector = await Injector.start(small)
  const { readingsPerS, tablets = 0 } = condition
  const load = { readingsPerS, nodes: nodesOf(readingsPerS), tablets }
  const around = await startAround({ mqtt: injector.live.mqttPort ?? 0, http: injector.live.port }, load)
  let backups = 0
  let backing = condition.backups === true
  const copying = (async () => {
    for (; backing; backups++) await injector.live.store.backup()
  })()
  if (small !== null) await injector.untilDiskIsFull()
  const took: Heard[] = []
  for (let n = 0; n < alarms; n++) took.push(await injector.alarm({ atCheckpoint: condition.atCheckpoint === true }))
  backing = false
  await copying
  const did = await around.stop()
  await injector.stop()
  if (small !== null) unmountSmall(small)
  const beside = [
    `${did.readingsPerS.toFixed(0)} readings/s acknowledged`,
    ...(tablets > 0 ? [`${tablets} tablets heard ${did.partsPerS.toFixed(0)} parts/s`] : []),
    ...(condition.backups ? [`${backups} backups`] : []),
  ]
  const times = took.map(({ ms }) => ms)
  if (!isInTime(times)) process.exitCode = 1
  return `${name.padEnd(10)} ${summary(times)}; computed p99 ${worst(took)} ms; ${beside.join(', ')}`
}

clearSmall()
console.log(`${alarms} alarms each; ours beside a bare broker that answers a message with a message, under the same load`)
for (const [name, condition] of Object.entries(conditions)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue
  console.log(await measure(name, condition))
  console.log(`${'  bare'.padEnd(10)} ${summary(await bare(alarms, condition.readingsPerS, nodesOf(condition.readingsPerS)))}`)
}
process.exit(process.exitCode ?? 0)
