import type { Ms } from '../../contract/fold.ts'
import { theilSen } from './robust.ts'

/** Level and slope over the last ten minutes, from means of half a minute: cheap, and a single step of the converter weighs little. */
export interface Trend {
  parts: { t: Ms; mean: number; count: number }[]
  /** The part that is being filled. */
  open: { slot: number; sumT: Ms; sum: number; count: number } | null
  line: TrendLine | null
}

export interface TrendLine {
  /** Newest time that went into it. */
  t: Ms
  /** Value of the line at `t`, with one standard deviation. */
  level: number
  levelSd: number
  slopePerH: number
  slopeSd: number
}

const partMs = 30_000
const partsKept = 20
/** A line through fewer, or over less than three minutes, says more about the noise than about the kiln. */
const fewestParts = 6
const shortestMs = 180_000
const hourMs = 3_600_000

export const noTrend = (): Trend => ({ parts: [], open: null, line: null })

/** Takes a value in; times must not go back. A part is closed, and the line drawn anew, by the first value of the next one. */
export function feedTrend(trend: Trend, t: Ms, value: number, lsb: number): void {
  const slot = Math.floor(t / partMs)
  const { open } = trend
  if (open !== null && open.slot !== slot) {
    trend.parts.push({ t: open.sumT / open.count, mean: open.sum / open.count, count: open.count })
    trend.parts = trend.parts.filter((part) => slot * partMs - part.t <= partsKept * partMs).slice(-partsKept)
    trend.line = drawLine(trend, lsb)
    trend.open = null
  }
  trend.open ??= { slot, sumT: 0, sum: 0, count: 0 }
  trend.open.sumT += t
  trend.open.sum += value
  trend.open.count++
}

function drawLine({ parts }: Trend, lsb: number): TrendLine | null {
  const first = parts[0]
  const last = parts.at(-1)
  if (first === undefined || last === undefined || parts.length < fewestParts || last.t - first.t < shortestMs) return null
  const x = parts.map(({ t }) => (t - last.t) / hourMs)
  const count = parts.reduce((sum, part) => sum + part.count, 0) / parts.length
  // A step of the converter has a standard deviation of lsb/√12; the mean of a part that much less.
  const line = theilSen(
    x,
    parts.map(({ mean }) => mean),
    lsb / Math.sqrt(12 * count),
  )
  if (line === null) return null
  const mean = x.reduce((sum, at) => sum + at, 0) / x.length
  const levelSd = Math.sqrt((line.scatter * line.scatter) / x.length + mean * mean * line.slopeSd * line.slopeSd)
  return { t: last.t, level: line.intercept, levelSd, slopePerH: line.slope, slopeSd: line.slopeSd }
}
