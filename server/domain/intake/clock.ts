import type { Ms } from '../../contract/fold.ts'

/**
 * When a boot's seconds began, on the service's axis: the least of (received - up) over the live packs of the last hour, because the
 * least delayed pack tells it best (wire format, rule 2). Kept as the least of each minute, so that an hour is 61 numbers.
 */
export interface EpochEstimate {
  minutes: { minute: number; leastMs: Ms }[]
  /** The beginning as the last packs in a row had it, and how many they were. */
  steady: { startMs: Ms; packs: number }
}

const minuteMs = 60_000
const windowMinutes = 60

/**
 * So many live packs in a row that agree among themselves within 2 s and lie more than 5 s after the estimate prove it wrong: one broken `up`, or a
 * service that started again with a better clock, would otherwise make all that is live look late for an hour. A network that was slow is told apart:
 * what it held back comes in a bunch and does not agree. Common practice, no source.
 */
const packsToOverrule = 6
const agreementMs = 2000
const overruledMs = 5000

export const noEpoch = (): EpochEstimate => ({ minutes: [], steady: { startMs: 0, packs: 0 } })

/** Takes a live pack into account. */
export function feedEpoch(epoch: EpochEstimate, receivedMs: Ms, upS: number): void {
  const minute = Math.floor(receivedMs / minuteMs)
  const startMs = receivedMs - upS * 1000
  const last = epoch.minutes.at(-1)
  if (last?.minute === minute) last.leastMs = Math.min(last.leastMs, startMs)
  else epoch.minutes.push({ minute, leastMs: startMs })
  const { steady } = epoch
  if (Math.abs(startMs - steady.startMs) <= agreementMs) steady.packs++
  else epoch.steady = { startMs, packs: 1 }
  if (steady.packs >= packsToOverrule && startMs - (epochMs(epoch) ?? startMs) > overruledMs) {
    epoch.minutes = [{ minute, leastMs: steady.startMs }]
  }
  while (epoch.minutes.length > 1 && (epoch.minutes[0]?.minute ?? minute) < minute - windowMinutes) epoch.minutes.shift()
}

/** Null while no live pack came. After a silence of more than an hour the last estimate stands until the next live pack. */
export function epochMs(epoch: EpochEstimate): Ms | null {
  let least: Ms | null = null
  for (const { leastMs } of epoch.minutes) if (least === null || leastMs < least) least = leastMs
  return least
}

/** Whether a node's own clock can be believed. */
export interface ClockTrust {
  suspect: boolean
  /** Live packs in a row that passed while suspect. */
  passed: number
  newestMs: Ms | null
  newestUpS: number | null
}

export const freshTrust = (): ClockTrust => ({ suspect: false, passed: 0, newestMs: null, newestUpS: null })

/** Wire format, rule 3. */
const largestDifferenceMs = 5000
const furthestAheadMs = 2000
/** Packs in a row before a suspect clock is believed again, so that it does not flicker; common practice, no source. */
const passesToTrust = 3

/**
 * Judges the clock of a node by a live pack.
 * @param newestMs newest time in the pack, by the node's clock
 * @param expectedMs when the pack was composed by its boot's epoch (a pack may be delayed without any fault of the clock); the reception where none is known
 */
export function judgeClock(trust: ClockTrust, newestMs: Ms, expectedMs: Ms, receivedMs: Ms, upS: number | null): void {
  const grew = upS !== null && trust.newestUpS !== null && upS > trust.newestUpS
  const steppedBack = grew && trust.newestMs !== null && newestMs < trust.newestMs
  // Either the beginning of the boot or the reception may be off without any fault of the clock; it must agree with one of them.
  const differenceMs = Math.min(Math.abs(newestMs - expectedMs), Math.abs(newestMs - receivedMs))
  const wrong = differenceMs > largestDifferenceMs || newestMs - receivedMs > furthestAheadMs || steppedBack
  if (wrong) {
    trust.suspect = true
    trust.passed = 0
  } else if (trust.suspect) {
    trust.passed++
    if (trust.passed >= passesToTrust) trust.suspect = false
  }
  if (trust.newestUpS === null || grew || upS === null) {
    trust.newestMs = newestMs
    trust.newestUpS = upS
  }
}
