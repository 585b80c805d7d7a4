import { solverOf } from '../../../server/domain/cooling/matrix.ts'

// Means that go with conditions, and spreads of rows with gaps and heavy tails.

export interface Row {
  /** NaN in gaps. */
  values: readonly number[]
  /** Squares of their noise. */
  noise: readonly number[]
  weight: number
}

const ridge = 3
const rounds = 3
/** Beyond so many middle deviations a row pulls no more (Huber). */
const pullsTo = 2

/** Weights of the conditions of one column, by least squares with a small ridge, rows that lie far off held back. */
export function meanWeights(conditions: readonly (readonly number[])[], values: readonly number[], weights: readonly number[]): number[] {
  const width = conditions[0]?.length ?? 0
  const all = weights.reduce((a, b) => a + b, 0)
  const own = weights.map((w) => (w * weights.length) / all)
  let pulls = own
  let fitted: number[] = []
  for (let round = 0; round < rounds; round++) {
    const square = Array.from({ length: width }, (_, i) => Array.from({ length: width }, (__, k) => (i === k ? ridge : 0)))
    const right = new Array<number>(width).fill(0)
    conditions.forEach((x, row) => {
      const w = pulls[row] ?? 0
      for (let i = 0; i < width; i++) {
        right[i] = (right[i] ?? 0) + w * (x[i] ?? 0) * (values[row] ?? 0)
        const to = square[i] as number[]
        for (let k = 0; k < width; k++) to[k] = (to[k] ?? 0) + w * (x[i] ?? 0) * (x[k] ?? 0)
      }
    })
    fitted = solverOf(square)(right)
    const off = conditions.map((x, row) => Math.abs((values[row] ?? 0) - x.reduce((sum, v, i) => sum + v * (fitted[i] ?? 0), 0)))
    const middle = 1.48 * ([...off].sort((a, b) => a - b)[Math.floor(off.length / 2)] ?? 1)
    pulls = own.map((w, row) => w * Math.min(1, (pullsTo * middle) / Math.max(1e-9, off[row] ?? 0)))
  }
  return fitted
}

/** Degrees of freedom of the heavy tails. */
const freedom = 3
const steps = 6

/** Spread of rows about nought: Student's, by repeated weighting, two and two of the columns that both are told. */
export function spreadOf(rows: readonly Row[], leastSquare = 1e-4): number[][] {
  const width = rows[0]?.values.length ?? 0
  const told = rows.map(({ values }) => values.flatMap((v, i) => (Number.isNaN(v) ? [] : [i])))
  let weights = rows.map(({ weight }) => weight)
  let spread: number[][] = []
  for (let step = 0; step <= steps; step++) {
    const sum = Array.from({ length: width }, () => new Array<number>(width).fill(0))
    const all = Array.from({ length: width }, () => new Array<number>(width).fill(0))
    rows.forEach(({ values }, row) => {
      const w = weights[row] ?? 0
      for (const i of told[row] ?? [])
        for (const k of told[row] ?? []) {
          ;(sum[i] as number[])[k] = (sum[i]?.[k] ?? 0) + w * (values[i] ?? 0) * (values[k] ?? 0)
          ;(all[i] as number[])[k] = (all[i]?.[k] ?? 0) + w
        }
    })
    spread = positive(sum.map((row, i) => row.map((v, k) => v / Math.max(1e-9, all[i]?.[k] ?? 0))), leastSquare) // prettier-ignore
    weights = rows.map(({ values, noise, weight }, row) => {
      const at = told[row] ?? []
      const part = at.map((i) => at.map((k) => (spread[i]?.[k] ?? 0) + (i === k ? (noise[i] ?? 0) : 0)))
      const own = at.map((i) => values[i] ?? 0)
      const far = solverOf(part)(own).reduce((total, v, i) => total + v * (own[i] ?? 0), 0)
      return (weight * (freedom + at.length)) / (freedom + far)
    })
  }
  return spread
}

/** The nearest symmetric matrix whose parts are all at least `least` (Jacobi's turns). */
export function positive(matrix: readonly (readonly number[])[], least: number): number[][] {
  const n = matrix.length
  const a = matrix.map((row, i) => row.map((v, k) => (v + (matrix[k]?.[i] ?? 0)) / 2))
  const v = a.map((_, i) => a.map((__, k) => (i === k ? 1 : 0)))
  const at = (m: number[][], i: number, k: number): number => m[i]?.[k] ?? 0
  for (let sweep = 0; sweep < 12; sweep++)
    for (let p = 0; p < n; p++)
      for (let q = p + 1; q < n; q++) {
        if (Math.abs(at(a, p, q)) < 1e-14) continue
        const angle = 0.5 * Math.atan2(2 * at(a, p, q), at(a, q, q) - at(a, p, p))
        const [c, s] = [Math.cos(angle), Math.sin(angle)]
        for (let k = 0; k < n; k++) {
          const [x, y] = [at(a, k, p), at(a, k, q)]
          ;(a[k] as number[])[p] = c * x - s * y
          ;(a[k] as number[])[q] = s * x + c * y
        }
        for (let k = 0; k < n; k++) {
          const [x, y] = [at(a, p, k), at(a, q, k)]
          ;(a[p] as number[])[k] = c * x - s * y
          ;(a[q] as number[])[k] = s * x + c * y
          const [f, g] = [at(v, k, p), at(v, k, q)]
          ;(v[k] as number[])[p] = c * f - s * g
          ;(v[k] as number[])[q] = s * f + c * g
        }
      }
  return a.map((_, i) => a.map((__, k) => a.reduce((sum, ___, j) => sum + Math.max(least, at(a, j, j)) * at(v, i, j) * at(v, k, j), 0)))
}
