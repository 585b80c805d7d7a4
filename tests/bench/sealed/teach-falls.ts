import { readFileSync, writeFileSync } from 'node:fs'
import { edges } from '../../../server/domain/cooling/falls.ts'
import { fallsOf, rowOf, type FallenNight } from './falls.ts'
import { kinWorlds } from './kin.ts'
import { meanWeights, positive, spreadOf, type Row } from './spread.ts'

// How tight nights fall, how kilns differ in it, and how the nights of one kiln do. Each world weighs alike.

/** Nights much farther off are rain or a probe. */
const farthest = 1.2

/** Gathers the nights of kilns, a line each, and adds them to what the file holds already. */
export function gatherFalls(first: number, count: number, file: string): void {
  for (let kiln = first; kiln < first + count; kiln++)
    writeFileSync(file, fallsOf(kiln).map((night) => `${JSON.stringify(night)}\n`).join(''), { flag: 'a' }) // prettier-ignore
}

export function teachFalls(file: string, table: string): void {
  const nights = readFileSync(file, 'utf8').trim().split('\n').map((line) => JSON.parse(line) as FallenNight) // prettier-ignore
  const rows = nights.map(({ night }) => rowOf(night))
  const weights = nights.map(({ world }) => 1000 / nights.filter((n) => n.world === world).length)
  const conditions = nights.map(({ night }) => night.conditions)
  const means = edges.slice(1).map((_, stretch) => {
    const told = rows.flatMap(({ logs }, row) => (Number.isNaN(logs[stretch] ?? NaN) ? [] : [row]))
    const of = <T>(all: readonly T[]): T[] => told.map((row) => all[row] as T)
    return meanWeights(of(conditions), of(rows.map(({ logs }) => logs[stretch] ?? 0)), of(weights))
  })
  const off = rows.map(({ logs }, row) =>
    logs.map((v, stretch) => {
      const mean = (means[stretch] ?? []).reduce((sum, w, i) => sum + w * (conditions[row]?.[i] ?? 0), 0)
      return Math.max(-farthest, Math.min(farthest, v - mean))
    }),
  )
  const all: Row[] = off.map((values, row) => ({ values, noise: rows[row]?.noise ?? [], weight: weights[row] ?? 0 }))
  const total = spreadOf(all)
  const within = spreadOf(pairs(nights, all))
  const between = positive(total.map((row, i) => row.map((v, k) => v - (within[i]?.[k] ?? 0))), 1e-5) // prettier-ignore
  const triangle = (m: readonly (readonly number[])[]): string => JSON.stringify(m.map((row) => row.map((v) => Number(v.toPrecision(4)))))
  writeFileSync(
    table,
    `// Made by \`npm run sealed-teach -- --only falls\` from simulated tight nights only; not edited by hand.

/** By stretch of \`../falls.ts\`, weights of the conditions: the mean logarithm of the fall per hour. */
// prettier-ignore
export const tightMeans: readonly (readonly number[])[] = ${triangle(means)}

/** How the nights of one kiln differ in it, stretch by stretch together. */
// prettier-ignore
export const nightSpread: readonly (readonly number[])[] = ${triangle(within)}

/** How kilns differ beyond that. */
// prettier-ignore
export const kilnSpread: readonly (readonly number[])[] = ${triangle(between)}
`,
  )
  const spreads = (m: readonly (readonly number[])[]): string => m.map((row, i) => Math.sqrt(row[i] ?? 0).toFixed(2)).join(' ')
  console.log(`${nights.length} nights; of a kiln ${spreads(within)}; of all ${spreads(total)}`)
}

/** Two nights of one kiln: their difference, less by the root of two, holds nothing of the kiln. */
function pairs(nights: readonly FallenNight[], rows: readonly Row[]): Row[] {
  const byKiln = new Map<number, number[]>()
  nights.forEach(({ kiln }, row) => byKiln.set(kiln, [...(byKiln.get(kiln) ?? []), row]))
  const told: (Row & { world: number })[] = []
  for (const [kiln, mine] of byKiln)
    for (const [i, a] of mine.entries())
      for (const b of mine.slice(i + 1)) {
        const [x, y] = [rows[a], rows[b]]
        if (x === undefined || y === undefined) continue
        told.push({
          values: x.values.map((v, k) => (v - (y.values[k] ?? 0)) / Math.SQRT2),
          noise: x.noise.map((v, k) => (v + (y.noise[k] ?? 0)) / 2),
          weight: 1,
          world: kiln % kinWorlds.length,
        })
      }
  const of = kinWorlds.map((_, world) => told.filter((row) => row.world === world).length)
  return told.map(({ world, ...row }) => ({ ...row, weight: 1000 / (of[world] ?? 1) }))
}
