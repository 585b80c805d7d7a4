import type { Fallen } from '../../contract/learnt.ts'
import { stretches, stretchesOf, type Stretch } from './falls.ts'
import { dot, type Matrix, partOf, solverOf } from './matrix.ts'
import { kilnSpread, nightSpread, tightMeans } from './tables/tight-nights.ts'

// How a tight night of this kiln falls. Logarithms of its fall per hour are normal about a mean that goes with what was known at the seal; kilns
// differ from kiln to kiln by one spread, the nights of one kiln by another. Earlier tight nights of the same kiln move the first and narrow it.

/** Weather and noise between two edges, K: own judgement, tried from 0.3 to 1. */
const weatherK = 0.5
/** Beyond this a night counts no more than so much: rain, a wind, a wall that was hardly warm. */
const farthest = 1.2

export interface Tight {
  /** Logarithms of the fall per hour, by stretch, and how they differ together. */
  means: readonly number[]
  spread: Matrix
}

/** Square of what noise makes of the logarithm over a stretch. */
export function noiseOf({ lostK }: Stretch): number {
  const share = weatherK / Math.max(1, lostK)
  return share * share
}

const meansOf = (conditions: readonly number[]): number[] => tightMeans.map((weights) => dot(weights, conditions))

/**
 * From firing to firing a kiln changes, cracks and settles: so much of the square of how kilns differ comes anew with each night. Without it nights behind
 * one let more tight ones cry (3.7 of 100 drums for 2.3) and told no more. Own judgement, tried at 0, 0.1 and 0.25.
 */
const changes = 0.1

/** `behind`: earlier tight nights of this kiln, newest first. */
export function tightNight(conditions: readonly number[], behind: readonly Fallen[]): Tight {
  const shift = new Array<number>(stretches).fill(0)
  const unknown = kilnSpread.map((row) => [...row])
  for (const night of [...behind].reverse()) {
    takeIn(shift, unknown, night)
    unknown.forEach((row, i) => row.forEach((v, k) => (row[k] = v + changes * (kilnSpread[i]?.[k] ?? 0))))
  }
  return {
    means: meansOf(conditions).map((mean, i) => mean + (shift[i] ?? 0)),
    spread: unknown.map((row, i) => row.map((v, k) => v + (nightSpread[i]?.[k] ?? 0))),
  }
}

/** What one night tells of the kiln: its mean difference and what is still unknown of it are moved (Kalman's step). */
function takeIn(shift: number[], unknown: number[][], night: Fallen): void {
  const told = stretchesOf(night)
  if (told.length === 0) return
  const means = meansOf(night.conditions)
  const at = told.map((s) => s.at)
  const both = unknown.map((row, i) => row.map((v, k) => v + (nightSpread[i]?.[k] ?? 0)))
  const solve = solverOf(partOf(both, at, told.map(noiseOf)))
  const off = told.map((s) => Math.max(-farthest, Math.min(farthest, s.logPerH - (means[s.at] ?? 0))) - (shift[s.at] ?? 0))
  const columns = unknown.map((row) => at.map((k) => row[k] ?? 0))
  const pulls = solve(off)
  const gains = columns.map((column) => solve(column))
  columns.forEach((column, i) => {
    shift[i] = (shift[i] ?? 0) + dot(column, pulls)
    const row = unknown[i] as number[]
    columns.forEach((other, k) => (row[k] = (row[k] ?? 0) - dot(other, gains[i] ?? [])))
  })
}
