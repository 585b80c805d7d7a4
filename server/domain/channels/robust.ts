/** So few are put in order one by one: cheaper than any other way. */
const few = 24
/** Numbers in a typed array are moved several times faster than in a plain one; one for all, since its making costs more than the rest. */
let desk = new Float64Array(256)

/** Puts the `k`-th smallest of the first `n` numbers on the desk into its place, none greater before it (Hoare's selection, from memory). */
function settle(n: number, k: number): void {
  let low = 0
  let high = n - 1
  while (low < high) {
    const pivot = desk[(low + high) >> 1] as number
    let i = low
    let j = high
    while (i <= j) {
      while ((desk[i] as number) < pivot) i++
      while ((desk[j] as number) > pivot) j--
      if (i > j) break
      const held = desk[i] as number
      desk[i++] = desk[j] as number
      desk[j--] = held
    }
    if (k <= j) high = j
    else if (k >= i) low = i
    else return
  }
}

function layOut(values: readonly number[]): void {
  const n = values.length
  if (n > desk.length) desk = new Float64Array(2 * n)
  for (let i = 0; i < n; i++) {
    const value = values[i] as number
    let k = i
    if (n <= few) for (; k > 0 && (desk[k - 1] as number) > value; k--) desk[k] = desk[k - 1] as number
    desk[k] = value
  }
  if (n > few) settle(n, n >> 1)
}

/** Middle value of finite numbers; the mean of the two middle ones for an even number. NaN for none. */
export function median(values: readonly number[]): number {
  const n = values.length
  if (n === 0) return NaN
  layOut(values)
  const half = n >> 1
  const upper = desk[half] as number
  if (n % 2 === 1) return upper
  let lower = desk[half - 1] as number
  if (n > few) for (let i = 0; i < half; i++) if ((desk[i] as number) > lower) lower = desk[i] as number
  return (lower + upper) / 2
}

/** Makes the median absolute deviation of a normal distribution its standard deviation. */
const normalMad = 1.4826

/** Middle and scale of some values; the scale never below `floor` (one step of the converter: on a grid most windows have none, instrument facts 4). */
export function robustScale(values: readonly number[], floor: number): { middle: number; scale: number } {
  const middle = median(values)
  const scale = Math.max(normalMad * median(values.map((value) => Math.abs(value - middle))), floor)
  return { middle, scale }
}

/** Indices of outliers by Hampel's centred test over 2 × `half` + 1 values, cut at the ends (instrument facts 4). */
export function hampelOutliers(values: readonly number[], half: number, limit: number, floor: number): number[] {
  return values.flatMap((value, i) => {
    const { middle, scale } = robustScale(values.slice(Math.max(0, i - half), i + half + 1), floor)
    return Math.abs(value - middle) > limit * scale ? [i] : []
  })
}

export interface RobustLine {
  slope: number
  intercept: number
  /** One standard deviation of the slope, from the scatter about the line. */
  slopeSd: number
  /** Scatter of single points about the line. */
  scatter: number
}

/**
 * Theil-Sen line: the median slope of all pairs, through the median of what it leaves (instrument facts 4). The deviation of the slope is that of
 * least squares with the robust scatter, for which the median pays about 5 % (from memory). Null with fewer than three different x.
 */
export function theilSen(x: readonly number[], y: readonly number[], floor: number): RobustLine | null {
  const slopes: number[] = []
  for (let i = 0; i < x.length; i++) {
    for (let k = i + 1; k < x.length; k++) {
      const run = (x[k] ?? 0) - (x[i] ?? 0)
      if (run !== 0) slopes.push(((y[k] ?? 0) - (y[i] ?? 0)) / run)
    }
  }
  if (x.length < 3 || slopes.length < 2) return null
  const slope = median(slopes)
  const rests = x.map((at, i) => (y[i] ?? 0) - slope * at)
  const intercept = median(rests)
  const scatter = Math.max(normalMad * median(rests.map((rest) => Math.abs(rest - intercept))), floor)
  const mean = x.reduce((sum, at) => sum + at, 0) / x.length
  const spread = x.reduce((sum, at) => sum + (at - mean) * (at - mean), 0)
  return { slope, intercept, slopeSd: (1.05 * scatter) / Math.sqrt(spread), scatter }
}
