// Fits the weights of server/domain/cooling/leak.ts on simulated nights: npm run sealed-teach -- [--count 3000] [--first 500000]
// Logistic regression; a night with a leak speaks for it from one to four hours after it began to burn, a tight one always against it.
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { leakFeatures } from '../../../server/domain/cooling/leak.ts'
import { burnsAt, type Signs } from './burning.ts'
import { follow } from './follow.ts'
import { phase } from './phases.ts'

const { values } = parseArgs({ options: { count: { type: 'string', default: '3000' }, first: { type: 'string', default: '500000' } } })
const rows: { x: number[]; leaks: boolean }[] = []
const first = Number(values.first)
for (let n = first; n < first + Number(values.count); n++) {
  const { course, readings } = phase(n)
  if (readings.off !== null) continue
  const burns = burnsAt(course)
  if (course.leak !== null && burns === null) continue
  const signs: Signs = (cooling, minute) => {
    const x = minute % 10 === 0 ? leakFeatures(cooling.points, cooling.firstK) : null
    if (x === null) return
    if (burns === null || minute < burns) rows.push({ x, leaks: false })
    else if (minute >= burns + 60 && minute <= burns + 240) rows.push({ x, leaks: true })
  }
  follow(course, readings, null, signs)
}

const width = (rows[0]?.x.length ?? 0) + 1
const weights = new Float64Array(width)
const leaking = rows.filter((r) => r.leaks).length
// both kinds weigh alike, leaks a third as much: one night in four leaks here, in a yard far fewer
const weightOf = (leaks: boolean): number => (leaks ? (rows.length - leaking) / leaking / 3 : 1)
const mean = (i: number): number => rows.reduce((sum, { x }) => sum + (x[i] ?? 0), 0) / rows.length
const means = Array.from({ length: width - 1 }, (_, i) => mean(i))
for (let round = 0; round < 15; round++) {
  const gradient = new Float64Array(width)
  const curve = Array.from({ length: width }, () => new Float64Array(width))
  for (const { x, leaks } of rows) {
    const z = [1, ...x.map((v, i) => v - (means[i] ?? 0))]
    const odds = z.reduce((sum, v, i) => sum + v * (weights[i] ?? 0), 0)
    const p = 1 / (1 + Math.exp(-Math.max(-30, Math.min(30, odds))))
    const w = weightOf(leaks)
    for (let i = 0; i < width; i++) {
      gradient[i] = (gradient[i] ?? 0) + w * ((leaks ? 1 : 0) - p) * (z[i] ?? 0)
      for (let k = 0; k < width; k++) (curve[i] as Float64Array)[k] = (curve[i]?.[k] ?? 0) + w * p * (1 - p) * (z[i] ?? 0) * (z[k] ?? 0)
    }
  }
  for (let i = 0; i < width; i++) {
    gradient[i] = (gradient[i] ?? 0) - 0.5 * (weights[i] ?? 0)
    ;(curve[i] as Float64Array)[i] = (curve[i]?.[i] ?? 0) + 0.5
  }
  solve(curve, gradient).forEach((step, i) => (weights[i] = (weights[i] ?? 0) + step))
}
const base = (weights[0] ?? 0) - means.reduce((sum, m, i) => sum + m * (weights[i + 1] ?? 0), 0)
const text = `// Made by \`npm run sealed-teach\`: weights of the signs in ../leak.ts, in their order.
export const leakBase = ${base.toFixed(3)}
export const leakWeights: readonly number[] = [${Array.from(weights.slice(1), (w) => w.toFixed(3)).join(', ')}]
`
writeFileSync(join(process.cwd(), 'server', 'domain', 'cooling', 'tables', 'leak-sign.ts'), text)
console.log(`${rows.length} moments, ${leaking} of leaks\n${text}`)

/** Gauss without more ado: the matrix is symmetric and positive. */
function solve(a: Float64Array[], b: Float64Array): number[] {
  const n = b.length
  const m = a.map((row, i) => [...row, b[i] ?? 0])
  for (let i = 0; i < n; i++)
    for (let k = i + 1; k < n; k++) {
      const f = (m[k]?.[i] ?? 0) / (m[i]?.[i] ?? 1)
      for (let j = i; j <= n; j++) (m[k] as number[])[j] = (m[k]?.[j] ?? 0) - f * (m[i]?.[j] ?? 0)
    }
  const x = new Array<number>(n).fill(0)
  for (let i = n - 1; i >= 0; i--) {
    let sum = m[i]?.[n] ?? 0
    for (let j = i + 1; j < n; j++) sum -= (m[i]?.[j] ?? 0) * (x[j] ?? 0)
    x[i] = sum / (m[i]?.[i] ?? 1)
  }
  return x
}
