import type { Ms } from '../../contract/fold.ts'
import { epochMs } from './clock.ts'
import type { Outcome } from './outcome.ts'
import { bootMemory, remark } from './state.ts'
import type { BootMemory, HeldBoot, NodeMemory, Reading } from './state.ts'

/** Readings that are held back for want of a time, at most, per node. */
const mostHeld = 20_000
/** No more of an old buffer is coming; common practice, no source. */
const quietMs = 30_000
/** How long a boot's first live pack is waited for; common practice, no source. */
const patienceMs = 120_000

/** Where a boot's seconds began: by its live packs, else as assumed. */
export const bootEpochMs = (boot: BootMemory): Ms | null => epochMs(boot.epoch) ?? boot.assumedEpochMs

/** Sends one reading on with its time. The time of a sample is given once, here. */
export function deliver(node: NodeMemory, reading: Reading, t: Ms, late: boolean, unsure: boolean, outcome: Outcome): void {
  const { quality, raw, value, coldJunctionC } = reading
  if (unsure) remark(node, 'time-unsure')
  const known = { kind: 'sample' as const, channel: `${node.node}/${reading.channel}`, t, late, raw, value }
  const told = { ...known, quality: unsure && quality === 'good' ? ('suspect' as const) : quality }
  outcome.inputs.push(coldJunctionC === null ? told : { ...told, coldJunctionC })
  node.samples++
}

/** Keeps a reading until its boot can be placed. */
export function hold(node: NodeMemory, boot: number, upS: number, reading: Reading, atMs: Ms): void {
  let held = node.held.find((other) => other.boot === boot)
  if (held === undefined) {
    held = { boot, sinceMs: atMs, lastMs: atMs, readings: [] }
    node.held.push(held)
  }
  held.lastMs = atMs
  held.readings.push({ upS, reading })
}

/** Places what was held and can be placed now (wire format, rule 4). Called with every message of the site. */
export function releaseHeld(node: NodeMemory, atMs: Ms, outcome: Outcome): void {
  if (node.held.length === 0) return
  const crowded = node.held.reduce((sum, { readings }) => sum + readings.length, 0) > mostHeld
  node.held = node.held.filter((held) => {
    const boot = bootMemory(node, held.boot)
    const known = epochMs(boot.epoch)
    if (known === null) {
      const assumed = assumedEpochMs(node, held, atMs, crowded)
      if (assumed === null) return true
      boot.assumedEpochMs = assumed
    }
    const beganMs = known ?? boot.assumedEpochMs ?? atMs
    for (const { upS, reading } of held.readings) {
      const t = Math.min(Math.round(beganMs + (upS + reading.relativeS) * 1000), atMs)
      deliver(node, reading, t, true, known === null, outcome)
    }
    return false
  })
}

/** So that the newest of them lies just before the new boot's first sample; where no boot was heard live, at their arrival. */
function assumedEpochMs(node: NodeMemory, { boot, sinceMs, lastMs, readings }: HeldBoot, atMs: Ms, crowded: boolean): Ms | null {
  const newestS = readings.reduce((newest, { upS, reading }) => Math.max(newest, upS + reading.relativeS), -Infinity)
  const nextMs = node.boot === null || node.boot === boot ? null : (node.boots.get(node.boot)?.firstMs ?? null)
  if (nextMs !== null && (crowded || atMs - lastMs > quietMs)) return nextMs - 1 - newestS * 1000
  if (crowded || atMs - sinceMs > patienceMs) return lastMs - newestS * 1000
  return null
}
