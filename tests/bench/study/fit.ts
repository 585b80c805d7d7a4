import { featureCount } from '../../../server/domain/estimate/features.ts'
import type { Form, Correction } from '../../../server/domain/estimate/correction.ts'
import type { FiringRows } from './rows.ts'

// Fits the learned correction: small linear forms, so that some dozens of firings are enough and none is learned by heart.

const width = featureCount + 1
const rounds = 250

/** Which features a form may use, by place in `featureNames`; fewer for the classes, which must carry over to other kilns. */
const uses = {
  classesThree: [0, 1, 2, 3, 4, 5, 6, 7],
  classesSmoke: [0, 1, 2, 3, 14, 15],
  other: [0, 2, 3, 4, 5, 6, 7, 8, 9, 11, 12, 14, 15],
}

interface Samples {
  count: number
  z: Float64Array
  weight: Float64Array
  /** Shares of good, watery, tarry about now, three a sample; -1 where nothing drips. */
  shares: Float64Array
  /** True smoke, hundreds of °C; NaN where unknown. */
  smoke: Float64Array
}

function samplesOf(firings: FiringRows[], mean: number[], sd: number[]): Samples {
  const count = firings.reduce((n, f) => n + f.x.length, 0)
  const column = (): Float64Array => new Float64Array(count)
  const s: Samples = {
    count,
    z: new Float64Array(count * width),
    weight: column(),
    shares: new Float64Array(3 * count),
    smoke: column(),
  }
  let i = 0
  for (const f of firings)
    for (const [r, row] of f.x.entries()) {
      const h = f.hours[r] ?? 0
      row.forEach((v, k) => (s.z[i * width + k] = Math.max(-3, Math.min(3, (v - (mean[k] ?? 0)) / (sd[k] ?? 1)))))
      s.z[i * width + featureCount] = 1
      const near = f.minutes.slice(Math.max(0, Math.round(h * 60) - 4), Math.round(h * 60) + 4)
      const sums = [0, 1, 2].map((c) => near.reduce((a, m) => a + (m[c] ?? 0), 0))
      const all = sums.reduce((a, b) => a + b, 0)
      s.weight[i] = all / Math.max(1, f.bestValue)
      sums.forEach((v, c) => (s.shares[3 * i + c] = all > 0.003 ? v / all : -1))
      s.smoke[i] = (f.smokeC[r] ?? NaN) / 100
      i++
    }
  return s
}

/**
 * Minimises by descent with a step of its own for each weight (Adam, from memory). `slope` writes the slopes of sample `i` at the forms'
 * values and returns the sample's weight; 0 leaves it out.
 */
function descend(
  s: Samples,
  forms: number,
  columns: number[],
  ridge: number,
  begin: number,
  slope: (values: Float64Array, i: number, by: Float64Array) => number,
): Form[] {
  const w = new Float64Array(forms * width)
  for (let f = 0; f < forms; f++) w[f * width + featureCount] = begin
  const used = [...columns, featureCount]
  const [g, m1, m2] = [new Float64Array(w.length), new Float64Array(w.length), new Float64Array(w.length)]
  const [values, by] = [new Float64Array(forms), new Float64Array(forms)]
  for (let round = 1; round <= rounds; round++) {
    g.fill(0)
    let total = 0
    let counted = 0
    for (let i = 0; i < s.count; i++) {
      for (let f = 0; f < forms; f++) {
        let sum = 0
        for (const k of used) sum += (w[f * width + k] ?? 0) * (s.z[i * width + k] ?? 0)
        values[f] = sum
      }
      const weight = slope(values, i, by)
      if (weight === 0) continue
      total += weight
      counted++
      for (let f = 0; f < forms; f++)
        for (const k of used) g[f * width + k] = (g[f * width + k] ?? 0) + weight * (by[f] ?? 0) * (s.z[i * width + k] ?? 0)
    }
    const step = 0.1 * (1 - round / (rounds * 1.05))
    for (let f = 0; f < forms; f++)
      for (const k of used) {
        const at = f * width + k
        const grad = (g[at] ?? 0) / (total || 1) + (k < featureCount ? ((2 * ridge) / (counted || 1)) * (w[at] ?? 0) : 0)
        m1[at] = 0.9 * (m1[at] ?? 0) + 0.1 * grad
        m2[at] = 0.99 * (m2[at] ?? 0) + 0.01 * grad * grad
        w[at] = (w[at] ?? 0) - (step * (m1[at] ?? 0)) / (Math.sqrt(m2[at] ?? 0) + 1e-6)
      }
  }
  return Array.from({ length: forms }, (_, f) => Array.from(w.subarray(f * width, (f + 1) * width), (v) => Number(v.toFixed(4))))
}

export function fit(firings: FiringRows[], smoke: boolean): Correction {
  const rows = firings.flatMap((f) => f.x)
  const round = (a: number[]): number[] => a.map((v) => Number(v.toFixed(4)))
  const mean = round(Array.from({ length: featureCount }, (_, k) => rows.reduce((a, r) => a + (r[k] ?? 0), 0) / rows.length))
  const sd = round(mean.map((m, k) => Math.sqrt(rows.reduce((a, r) => a + ((r[k] ?? 0) - m) * ((r[k] ?? 0) - m), 0) / rows.length) + 1e-3))
  const s = samplesOf(firings, mean, sd)
  const [watery = [], tarry = []] = descend(s, 2, smoke ? uses.classesSmoke : uses.classesThree, smoke ? 20 : 10, 0, (v, i, by) => {
    if ((s.shares[3 * i] ?? -1) < 0) return 0
    const [a, b] = [Math.exp(Math.min(30, v[0] ?? 0)), Math.exp(Math.min(30, v[1] ?? 0))]
    by[0] = a / (1 + a + b) - (s.shares[3 * i + 1] ?? 0)
    by[1] = b / (1 + a + b) - (s.shares[3 * i + 2] ?? 0)
    return s.weight[i] ?? 0
  })
  const levels = [0.07, 0.5, 0.93]
  const quantiles = (target: Float64Array, columns: number[], begin: number, soft: number): Form[] =>
    descend(s, 3, columns, 5, begin, (v, i, by) => {
      const real = target[i] ?? NaN
      if (Number.isNaN(real)) return 0
      levels.forEach((level, f) => (by[f] = 1 / (1 + Math.exp(-((v[f] ?? 0) - real) / soft)) - level))
      return 1
    })
  const withoutProbe = uses.other.filter((k) => k < 14)
  return {
    mean,
    sd,
    watery,
    tarry,
    smoke: quantiles(s.smoke, withoutProbe, 1, 0.05),
  }
}
