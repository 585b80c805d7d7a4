import type { Ms } from '../../contract/fold.ts'

/**
 * When a boot's seconds began, on the service's axis: the least of (received - up) over the live packs of the last hour, because the
 * least delayed pack tells it best (wire format, rule 2). Kept as the least of each minute, so that an hour is 61 numbers.
 */
export interface EpochEstimate {
  minutes: { minute: number; leastMs: Ms }[]
}

const minuteMs = 60_000
const windowMinutes = 60

export const noEpoch = (): EpochEstimate => ({ minutes: [] })

/** Takes a live pack into account. */
export function feedEpoch(epoch: EpochEstimate, receivedMs: Ms, upS: number): void {
  const minute = Math.floor(receivedMs / minuteMs)
  const startMs = receivedMs - upS * 1000
  const last = epoch.minutes.at(-1)
  if (last?.minute === minute) last.leastMs = Math.min(last.leastMs, startMs)
  else epoch.minutes.push({ minute, leastMs: startMs })
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
 * @param expectedMs when the pack was composed by its boot's epoch (a pack may be delayed without any fault of the clock); reception where none is known
 */
export function judgeClock(trust: ClockTrust, newestMs: Ms, expectedMs: Ms, receivedMs: Ms, upS: number | null): void {
  const grew = upS !== null && trust.newestUpS !== null && upS > trust.newestUpS
  const steppedBack = grew && trust.newestMs !== null && newestMs < trust.newestMs
  const wrong = Math.abs(newestMs - expectedMs) > largestDifferenceMs || newestMs - receivedMs > furthestAheadMs || steppedBack
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
