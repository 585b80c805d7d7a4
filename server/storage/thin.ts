/** A stretch of a series with what must stay visible of it; a single point is a grain whose times are all the same. Times in ms. */
export interface Grain {
  first: number
  last: number
  low: number | null
  lowAt: number | null
  high: number | null
  highAt: number | null
  nullAt: number | null
  count: number
}

export interface Thinned {
  t: number[]
  value: (number | null)[]
}

export function grainOf(t: number, value: number | null): Grain {
  if (value === null) return { first: t, last: t, low: null, lowAt: null, high: null, highAt: null, nullAt: t, count: 1 }
  return { first: t, last: t, low: value, lowAt: t, high: value, highAt: t, nullAt: null, count: 1 }
}

/** Takes `other` into `grain`. */
export function mergeGrain(grain: Grain, other: Grain): void {
  grain.first = Math.min(grain.first, other.first)
  grain.last = Math.max(grain.last, other.last)
  grain.count += other.count
  grain.nullAt ??= other.nullAt
  if (other.low !== null && (grain.low === null || other.low < grain.low)) {
    grain.low = other.low
    grain.lowAt = other.lowAt
  }
  if (other.high !== null && (grain.high === null || other.high > grain.high)) {
    grain.high = other.high
    grain.highAt = other.highAt
  }
}

/** A channel counts as lost after max(60 s, 6 periods) (wire format, rule 7): from there on the line is broken. */
export function gapMs(grains: readonly Grain[]): number {
  const periods = grains
    .map((grain, index) =>
      grain.count > 1 ? (grain.last - grain.first) / (grain.count - 1) : grain.first - (grains[index - 1]?.first ?? grain.first),
    )
    .filter((period) => period > 0)
    .sort((a, b) => a - b)
  return Math.max(60_000, 6 * (periods[periods.length >> 1] ?? 0))
}

/** Minimum and maximum of each bucket in order of time, and a null wherever the line is broken. @param grains in order of time */
export function thin(grains: readonly Grain[], from: number, widthMs: number): Thinned {
  const out: Thinned = { t: [], value: [] }
  const gap = gapMs(grains)
  let open: Grain | null = null
  let bucket = -1
  for (const grain of grains) {
    const own = Math.floor((grain.first - from) / widthMs)
    const broken = open !== null && grain.first - open.last > gap
    if (open !== null && (broken || own !== bucket)) {
      emit(out, open)
      if (broken) push(out, open.last + 1, null)
      open = null
    }
    bucket = own
    if (open === null) open = { ...grain }
    else mergeGrain(open, grain)
  }
  if (open !== null) emit(out, open)
  return out
}

function emit(out: Thinned, grain: Grain): void {
  const marks: [number, number | null][] = []
  if (grain.lowAt !== null) marks.push([grain.lowAt, grain.low])
  if (grain.highAt !== null && grain.highAt !== grain.lowAt) marks.push([grain.highAt, grain.high])
  if (grain.nullAt !== null) marks.push([grain.nullAt, null])
  for (const [t, value] of marks.sort((a, b) => a[0] - b[0])) push(out, t, value)
}

function push(out: Thinned, t: number, value: number | null): void {
  out.t.push(t)
  out.value.push(value)
}

/** Two points a bucket: half as many buckets as points wanted. */
export function bucketWidthMs(from: number, to: number, points: number): number {
  return Math.max(1, Math.ceil((to - from) / Math.max(1, Math.floor(points / 2))))
}
