import type { Calibration, Ms, Quality } from '../../contract/fold.ts'
import { valueError } from './accuracy.ts'
import type { Probe } from './accuracy.ts'
import { calibrate } from './calibration.ts'
import { median, robustScale } from './robust.ts'
import { feedTrend, noTrend } from './trend.ts'
import type { Trend } from './trend.ts'

/** One channel as it is followed through a firing: plain, bounded, changed in place. */
export interface Track {
  periodS: number
  lsb: number
  probe: Probe | null
  /** What the sample just taken is worth: calibrated, or null where it was late, old, faulty or an outlier. */
  took: number | null
  /** Last value that passed, and when it was measured; null after a fault. */
  value: number | null
  t: Ms | null
  quality: Quality
  calibrated: boolean
  /** When it was last heard at all, faults and outliers included. */
  heardMs: Ms | null
  nodeLost: boolean
  /** Last values that passed, oldest first. */
  recent: number[]
  /** An outlier that the next sample may confirm as a real step. */
  doubted: number | null
  /** Where the values stood before the last step, until enough came after it. */
  stepFrom: { middle: number; scale: number } | null
  /** Scatter of single values, from a full window. */
  scatter: number | null
  outliersInRow: number
  /** How far the last value that passed may be off. */
  error: number
  trend: Trend
}

export interface TrackSample {
  t: Ms
  late: boolean
  quality: Quality
  /** Linearised, before field calibration; null on a fault. */
  value: number | null
}

export interface TrackReading {
  /** Calibrated and outlier-checked, never smoothed; null when faulty, lost or never heard. */
  value: number | null
  quality: Quality
  /** When the value was measured. */
  t: Ms | null
  heard: 'fresh' | 'late' | 'lost' | 'never'
  /** Per hour over the last ten minutes, with one standard deviation; null while too short or too old. */
  slopePerH: number | null
  slopeSd: number | null
  /** The same line's value at its newest end, with one standard deviation: for display and for slow logic. */
  level: number | null
  levelSd: number | null
  /** How far the value may be off (instrument facts 2.10), same unit. */
  error: number
}

/**
 * Values looked back on, and how many scales off is an outlier. The centred test of the handbook takes 7 and 3; looking back only, on a fire that
 * flickers, that turns away a tenth of the good values of the recorded firings. 11 and 5, with a scale no less than the scatter between neighbours,
 * turn away one in three hundred and miss 3 of 707 spikes over 40 K.
 */
const lookBack = 11
const limitScales = 5
const fewestToJudge = 4
/** Widens the scatter while a window is young; common practice, no source. */
const youngFactor = 2
/** After so long a silence the next value is taken as it comes; common practice, no source. */
const forgetMs = 300_000
const forgetPeriods = 10

export function startTrack(periodS: number, lsb: number, probe: Probe | null = null): Track {
  return {
    ...{ periodS, lsb, probe, took: null, value: null, t: null, quality: 'good', calibrated: false, heardMs: null, nodeLost: false },
    ...{
      recent: [],
      doubted: null,
      stepFrom: null,
      scatter: null,
      outliersInRow: 0,
      error: valueError(probe, 0, false, lsb / Math.sqrt(12)),
      trend: noTrend(),
    },
  }
}

/** A birth document, or the first pack, told more of the channel. */
export function describeTrack(track: Track, periodS: number, lsb: number, probe: Probe | null): Track {
  track.periodS = periodS
  track.lsb = lsb
  track.probe = probe ?? track.probe
  return track
}

/** The node's will was heard, or the node is back. */
export function trackNode(track: Track, is: 'up' | 'lost'): Track {
  track.nodeLost = is === 'lost'
  return track
}

/** Takes a sample in. Late ones, and ones older than what was heard, change nothing: they belong to the history. */
export function trackSample(track: Track, sample: TrackSample, calibration?: Calibration): Track {
  track.took = null
  const { t, late, quality } = sample
  if (late || (track.heardMs !== null && t <= track.heardMs)) return track
  const silentMs = track.heardMs === null ? 0 : t - track.heardMs
  if (silentMs > Math.max(forgetMs, forgetPeriods * track.periodS * 1000)) {
    track.recent = []
    track.stepFrom = null
  }
  track.heardMs = t
  track.nodeLost = false
  if (sample.value === null || quality.startsWith('fault:')) {
    track.value = null
    track.quality = quality
    track.doubted = null
    return track
  }
  const value = calibrate(calibration, sample.value)
  track.calibrated = calibration !== undefined && (calibration.gain !== 1 || calibration.offset !== 0)
  if (isOutlier(track, value)) {
    track.doubted = value
    track.outliersInRow++
    // One spike is passed over; where nothing agrees with anything the number can not be stood by.
    if (track.outliersInRow > 1) track.quality = 'suspect'
    return track
  }
  track.outliersInRow = 0
  track.doubted = null
  track.took = value
  track.value = value
  track.t = t
  track.quality = quality
  track.recent.push(value)
  if (track.recent.length > lookBack) track.recent.shift()
  if (track.recent.length >= fewestToJudge) {
    track.stepFrom = null
    track.scatter = scatterOf(track)
  }
  track.error = valueError(track.probe, value, track.calibrated, track.scatter ?? track.lsb / Math.sqrt(12))
  feedTrend(track.trend, t, value, track.lsb)
  return track
}

/** Hampel's test looking back. A second value off to the same side that agrees with the first makes it a step: the window starts anew there. */
function isOutlier(track: Track, value: number): boolean {
  const { recent, scatter, doubted, stepFrom } = track
  // Two spikes in a row look like a step until the old level is back.
  if (stepFrom !== null && Math.abs(value - stepFrom.middle) <= limitScales * stepFrom.scale) {
    track.recent = []
    return false
  }
  // Few values say little of their scatter: what was known of it before stands in.
  if (recent.length < (scatter === null ? fewestToJudge : 1)) return false
  const known = (scatter ?? 0) * (recent.length < fewestToJudge ? youngFactor : 1)
  const { middle, scale } = robustScale(recent, Math.max(known, track.lsb))
  const away = value - middle
  if (Math.abs(away) <= limitScales * scale) return false
  if (doubted === null) return true
  const doubtedAway = doubted - middle
  const agrees = doubtedAway * away > 0 && Math.abs(value - doubted) <= Math.max(Math.abs(away) / 4, limitScales * scale)
  if (!agrees) return true
  track.stepFrom = { middle, scale }
  track.recent = [doubted]
  return false
}

/** Wire format, rule 7. */
function heardAt({ heardMs, nodeLost, periodS }: Track, at: Ms): TrackReading['heard'] {
  if (heardMs === null) return 'never'
  const silentS = (at - heardMs) / 1000
  if (nodeLost || silentS > Math.max(60, 6 * periodS)) return 'lost'
  return silentS > Math.max(15, 3 * periodS) ? 'late' : 'fresh'
}

/** What stands at a time. Changes nothing. */
export function readTrack(track: Track, at: Ms): TrackReading {
  const heard = heardAt(track, at)
  const gone = heard === 'lost' || heard === 'never'
  const value = gone ? null : track.value
  // The line is drawn every half minute; when its end is older than two silences allow, it tells of another time.
  const line =
    !gone && track.trend.line !== null && at - track.trend.line.t <= Math.max(120_000, 6000 * track.periodS) ? track.trend.line : null
  return {
    ...{ value, quality: track.quality, t: track.t, heard },
    slopePerH: line?.slopePerH ?? null,
    slopeSd: line?.slopeSd ?? null,
    level: line?.level ?? null,
    levelSd: line?.levelSd ?? null,
    error: track.error,
  }
}

/** Scatter of single values about their run, from the steps between neighbours so that a slope does not count; at least that of the converter's step. */
function scatterOf({ recent, lsb }: Track): number {
  const steps = recent.slice(1).map((value, i) => Math.abs(value - (recent[i] ?? value)))
  return Math.max((1.4826 * median(steps)) / Math.SQRT2, lsb / Math.sqrt(12))
}
