/** Symmetric, row by row. */
export type Matrix = readonly (readonly number[])[]

/** The part of the rows and columns `at`, with `added` on its diagonal. */
export const partOf = (m: Matrix, at: readonly number[], added: readonly number[]): number[][] =>
  at.map((i, a) => at.map((k) => (m[i]?.[k] ?? 0) + (i === k ? (added[a] ?? 0) : 0)))

/** Takes a positive symmetric matrix apart (Cholesky) and gives what solves `m x = b`. */
export function solverOf(m: Matrix): (b: readonly number[]) => number[] {
  const n = m.length
  const low: number[][] = []
  for (let i = 0; i < n; i++) {
    const row: number[] = []
    for (let k = 0; k <= i; k++) {
      let sum = m[i]?.[k] ?? 0
      for (let j = 0; j < k; j++) sum -= (row[j] ?? 0) * (k === i ? (row[j] ?? 0) : (low[k]?.[j] ?? 0))
      row.push(k === i ? Math.sqrt(Math.max(sum, 1e-12)) : sum / (low[k]?.[k] ?? 1))
    }
    low.push(row)
  }
  return (b) => {
    const x: number[] = []
    for (let i = 0; i < n; i++) {
      let sum = b[i] ?? 0
      for (let k = 0; k < i; k++) sum -= (low[i]?.[k] ?? 0) * (x[k] ?? 0)
      x.push(sum / (low[i]?.[i] ?? 1))
    }
    for (let i = n - 1; i >= 0; i--) {
      let sum = x[i] ?? 0
      for (let k = i + 1; k < n; k++) sum -= (low[k]?.[i] ?? 0) * (x[k] ?? 0)
      x[i] = sum / (low[i]?.[i] ?? 1)
    }
    return x
  }
}

export const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, v, i) => sum + v * (b[i] ?? 0), 0)
