import type { Ms } from '../../contract/fold.ts'

/** RFC 8428, 4.5.3: below this a time is relative to the sending of the pack. */
const relativeBelowS = 268_435_456
/** Wire format, rule 9: 2020 to 2100. */
const earliestMs = Date.UTC(2020, 0, 1)
const latestMs = Date.UTC(2100, 0, 1)
/** Relative times that no buffer and no clock explains, s; common practice, no source. */
const oldestRelativeS = -31 * 86_400
const furthestRelativeS = 86_400
/** Wire format, rule 3, taken for relative times as well: nothing is measured after its pack was composed. */
const aheadToleranceS = 2

export interface RecordTime {
  relativeS: number
  absoluteMs: Ms | null
}

/** How the times of one pack stand to each other. */
export interface PackTimes {
  /** By the node's own clock; null where the pack has only relative times. */
  newestAbsoluteMs: Ms | null
  /** How far the newest relative time lies ahead of the pack, s; 0 where it does not. */
  aheadS: number
}

export function packTimes(pack: readonly { record: { timeS: number } }[]): PackTimes {
  let newestS = -Infinity
  let aheadS = 0
  for (const { record } of pack) {
    const { timeS } = record
    if (timeS >= relativeBelowS) newestS = isYear(timeS * 1000) ? Math.max(newestS, timeS) : newestS
    else if (timeS > aheadToleranceS && timeS <= furthestRelativeS) aheadS = Math.max(aheadS, timeS)
  }
  return { newestAbsoluteMs: newestS === -Infinity ? null : toMs(newestS), aheadS }
}

/** Null for a time that can not be meant. Relative times ahead of the pack are taken against the newest of them. */
export function recordTime(timeS: number, { newestAbsoluteMs, aheadS }: PackTimes): RecordTime | null {
  if (timeS >= relativeBelowS) {
    const absoluteMs = toMs(timeS)
    if (!isYear(absoluteMs) || newestAbsoluteMs === null) return null
    return { relativeS: (absoluteMs - newestAbsoluteMs) / 1000, absoluteMs }
  }
  if (timeS < oldestRelativeS || timeS > furthestRelativeS) return null
  return { relativeS: timeS - aheadS, absoluteMs: null }
}

const isYear = (ms: Ms): boolean => ms >= earliestMs && ms < latestMs

/** Wire format, rule 1: to 1 ms. */
const toMs = (timeS: number): Ms => Math.round(timeS * 1000)
