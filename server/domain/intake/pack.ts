import type { Ms } from '../../contract/fold.ts'
import { resolvePack } from '../senml/resolve.ts'
import { acceptRecords } from './accept.ts'
import type { Accepted, Identity } from './accept.ts'
import { epochMs, feedEpoch, judgeClock } from './clock.ts'
import { tellChannels } from './announce.ts'
import { lookUpSample, printOf, rememberPack, sightPack, sightSample } from './identity.ts'
import { refuse } from './outcome.ts'
import type { Outcome } from './outcome.ts'
import { bootEpochMs, deliver, hold } from './place.ts'
import { bootMemory, remark } from './state.ts'
import type { NodeMemory, Reading } from './state.ts'

export interface Arrival {
  atMs: Ms
  /** False for `backlog`. */
  live: boolean
  payload: Uint8Array
}

/** One SenML pack: resolve, accept, tell duplicates and conflicts, judge the clock, place in time, deliver. */
export function takePack(node: NodeMemory, pack: readonly unknown[], arrival: Arrival, outcome: Outcome): void {
  const resolved = resolvePack(pack)
  if (!resolved.ok) {
    refuse(outcome, node, resolved.reason, null)
    return
  }
  for (const { index, reason } of resolved.problems) refuse(outcome, node, reason, index)
  const accepted = acceptRecords(node, resolved, arrival.atMs, outcome)
  // A pack that says only who it is from still says that its node is there.
  if (accepted === null || (accepted.readings.length === 0 && accepted.identity.boot === null)) return
  const fresh = tellApart(node, accepted, arrival, outcome)
  if (fresh === null) return
  if (arrival.live) hearLive(node, accepted, arrival.atMs, outcome)
  tellChannels(node, accepted.updates, fresh, outcome)
  for (const reading of fresh) placeReading(node, accepted.identity, reading, arrival, outcome)
}

/** The readings that were not heard before; null for a pack that brings nothing but what was heard, or contradicts it. */
function tellApart(node: NodeMemory, { identity, readings }: Accepted, { live, payload }: Arrival, outcome: Outcome): Reading[] | null {
  const { boot, seq, upS } = identity
  if (boot === null) {
    remark(node, 'unsequenced')
    return readings
  }
  const { seen } = bootMemory(node, boot)
  const print = printOf(payload)
  const sighting = seq === null ? 'new' : sightPack(seen, seq, print)
  if (sighting === 'again' || (sighting === 'forgotten' && !live)) {
    node.duplicates += readings.length
    return null
  }
  const fresh: Reading[] = []
  let conflicts = 0
  for (const reading of readings) {
    const key = reading.absoluteMs ?? (upS === null ? null : Math.round((upS + reading.relativeS) * 1000))
    const found =
      key === null
        ? 'new'
        : sighting === 'new'
          ? sightSample(seen, reading.channel, key, reading.sent)
          : lookUpSample(seen, reading.channel, key, reading.sent)
    if (found === 'again') node.duplicates++
    else if (found === 'new' && sighting === 'new') fresh.push(reading)
    else {
      conflicts++
      refuse(outcome, node, 'conflict', reading.record)
    }
  }
  if (seq !== null && sighting === 'new') rememberPack(seen, seq, print)
  if (conflicts > 0) countConflict(node, outcome)
  return sighting === 'new' && (fresh.length > 0 || readings.length === 0) ? fresh : null
}

/** Wire format, rule 1. Asked again after twice as many each time, so that a node that does not listen is not shouted at. */
const conflictsToAsk = 3

function countConflict(node: NodeMemory, outcome: Outcome): void {
  node.conflicts++
  node.bootConflicts++
  const asks = node.bootConflicts / conflictsToAsk
  if (Number.isInteger(Math.log2(asks))) outcome.commands.push({ node: node.node, do: 'rebirth', why: 'conflicts' })
}

/** What a live pack tells beside its samples: that the node is there, which boot runs, how its clock stands. */
function hearLive(node: NodeMemory, { identity, times }: Accepted, atMs: Ms, outcome: Outcome): void {
  const { boot, upS } = identity
  node.lastHeardMs = atMs
  if (node.told !== 'up') {
    node.told = 'up'
    if (node.said !== 'unknown') node.said = 'ready'
    outcome.inputs.push({ kind: 'node', node: node.node, is: 'up' })
  }
  if (boot !== null) {
    const memory = bootMemory(node, boot)
    // A boot that was heard before and is not the running one is an old one, sent late.
    if (boot !== node.boot && epochMs(memory.epoch) === null) startBoot(node, boot)
    if (upS !== null) feedEpoch(memory.epoch, atMs, upS)
  }
  const epoch = boot === null || upS === null ? null : epochMs(bootMemory(node, boot).epoch)
  const composedMs = epoch === null || upS === null ? atMs : epoch + upS * 1000
  if (times.newestAbsoluteMs !== null) judgeClock(node.trust, times.newestAbsoluteMs, composedMs, atMs, upS)
  else if (times.aheadS > 0) {
    remark(node, 'time-ahead')
    judgeClock(node.trust, composedMs + times.aheadS * 1000, composedMs, atMs, upS)
  }
}

function startBoot(node: NodeMemory, boot: number): void {
  node.boot = boot
  node.bootConflicts = 0
  node.trust.newestMs = null
  node.trust.newestUpS = null
}

/** Wire format, rule 5. */
const lateMs = 15_000
const latePeriods = 3
/** Wire format, rule 3: further ahead than this no clock is believed. */
const aheadMs = 2000

function placeReading(node: NodeMemory, { boot, upS }: Identity, reading: Reading, { atMs, live }: Arrival, outcome: Outcome): void {
  const memory = boot === null ? null : bootMemory(node, boot)
  const beganMs = memory === null || upS === null ? null : bootEpochMs(memory)
  let t: Ms
  let unsure = false
  if (reading.absoluteMs !== null && !node.trust.suspect && reading.absoluteMs <= atMs + aheadMs) t = reading.absoluteMs
  else if (boot !== null && upS !== null) {
    if (memory === null || beganMs === null) {
      hold(node, boot, upS, reading, atMs)
      return
    }
    unsure = memory.epoch.minutes.length === 0
    t = beganMs + (upS + reading.relativeS) * 1000
  } else {
    unsure = !live
    t = atMs + reading.relativeS * 1000
  }
  t = Math.min(Math.round(t), atMs)
  const periodS = node.channels.get(reading.channel)?.periodS ?? 0
  const late = !live || atMs - t > Math.max(lateMs, latePeriods * periodS * 1000)
  deliver(node, reading, t, late, unsure, outcome)
  if (memory !== null && !unsure && (memory.firstMs === null || t < memory.firstMs)) memory.firstMs = t
}
