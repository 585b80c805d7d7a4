import type { Ms } from '../../contract/fold.ts'

/** One value a minute of one role, oldest first; null where the channel gave nothing good. Four hours are kept. */
export interface History {
  minute: number
  values: (number | null)[]
}

const kept = 240
const minuteMs = 60_000

export function emptyHistory(): History {
  return { minute: 0, values: [] }
}

/** Writes the level of the minute that ends at `at`; minutes that were skipped become gaps. */
export function write(history: History, at: Ms, value: number | null): void {
  const minute = Math.floor(at / minuteMs)
  const gap = history.values.length === 0 ? 1 : minute - history.minute
  if (gap <= 0) return
  if (gap > kept) history.values = []
  else for (let i = 1; i < gap; i++) history.values.push(null)
  // a thousandth is finer than any probe, and keeps a checkpoint small
  history.values.push(value === null ? null : Math.round(value * 1000) / 1000)
  history.minute = minute
  if (history.values.length > kept) history.values.splice(0, history.values.length - kept)
}

/** The value below which the share `part` of the last `minutes` lies (nearest rank); null with fewer than a third of them. */
export function quantile(history: History, minutes: number, part: number): number | null {
  const values = history.values.slice(-minutes).filter((v): v is number => v !== null)
  if (values.length === 0 || values.length * 3 < Math.min(minutes, history.values.length)) return null
  values.sort((a, b) => a - b)
  return values[Math.min(values.length - 1, Math.floor(part * values.length))] ?? null
}

/** Mean of `minutes`, leaving out the last `skip`; null with fewer than a third of them. */
export function mean(history: History, minutes: number, skip = 0): number | null {
  let sum = 0
  let n = 0
  const end = history.values.length - skip
  for (let i = Math.max(0, end - minutes); i < end; i++) {
    const v = history.values[i]
    if (v === null || v === undefined) continue
    sum += v
    n++
  }
  return n === 0 || n * 3 < Math.min(minutes, end) ? null : sum / n
}

/** Least-squares slope over `minutes`, per hour, leaving out the last `skip`; null with fewer than half of them (at least 3). */
export function slope(history: History, minutes: number, skip = 0): number | null {
  let n = 0
  let sx = 0
  let sy = 0
  let sxx = 0
  let sxy = 0
  const end = history.values.length - skip
  const first = Math.max(0, end - minutes)
  for (let i = first; i < end; i++) {
    const y = history.values[i]
    if (y === null || y === undefined) continue
    const x = i - first
    n++
    sx += x
    sy += y
    sxx += x * x
    sxy += x * y
  }
  const spread = n * sxx - sx * sx
  if (n < 3 || n * 2 < minutes || spread <= 0) return null
  return ((n * sxy - sx * sy) / spread) * 60
}

export interface HourlyTrend {
  slopePerH: number
  /** One standard deviation. */
  slopeSd: number
}

/** Neighbouring minutes of a fire tell much the same, so that a line through them is surer of itself than it should be; no source. */
const alikeFactor = 2

/** Slope over `minutes` with its standard deviation, per hour; null where {@link slope} is. */
export function trendOver(history: History, minutes: number): HourlyTrend | null {
  const slopePerH = slope(history, minutes)
  if (slopePerH === null) return null
  const last = history.values.slice(-minutes)
  const points = last.flatMap((y, x) => (y === null ? [] : [{ x, y }]))
  const n = points.length
  const middleX = points.reduce((sum, { x }) => sum + x, 0) / n
  const middleY = points.reduce((sum, { y }) => sum + y, 0) / n
  let squares = 0
  let spread = 0
  for (const { x, y } of points) {
    const off = y - middleY - (slopePerH / 60) * (x - middleX)
    squares += off * off
    spread += (x - middleX) * (x - middleX)
  }
  return { slopePerH, slopeSd: alikeFactor * Math.sqrt(squares / (n - 2) / spread) * 60 }
}

/** The largest value of the last `minutes`. */
export function highest(history: History, minutes: number): number | null {
  let top: number | null = null
  for (let i = Math.max(0, history.values.length - minutes); i < history.values.length; i++) {
    const v = history.values[i]
    if (v !== null && v !== undefined && (top === null || v > top)) top = v
  }
  return top
}

export function lowest(history: History, minutes: number): number | null {
  let bottom: number | null = null
  for (let i = Math.max(0, history.values.length - minutes); i < history.values.length; i++) {
    const v = history.values[i]
    if (v !== null && v !== undefined && (bottom === null || v < bottom)) bottom = v
  }
  return bottom
}
