import type { Fallen } from '../../contract/learnt.ts'
import { endH, startH, stretchesOf } from './falls.ts'
import { dot, partOf, solverOf } from './matrix.ts'
import { noiseOf, type Tight } from './tight.ts'

/** A fire that begins is felt by the wall after so long, h: of 0.4 to 1.5 no other told more. */
const feltAfterH = 0.7
/** Hours after the seal at which it may have begun. */
const begins = [0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28]
const leastStretches = 2
const leastH = 2
/** A fall slower than this is not taken as a measure, K/h. */
const leastFallKPerH = 2

/** Mean over a stretch of what of a steady fire the wall feels, by when it began. */
function felt(began: number, stretch: number): number {
  const rise = (h: number): number => (h <= 0 ? 0 : h - feltAfterH * (1 - Math.exp(-h / feltAfterH)))
  return (rise(endH(stretch) - began) - rise(startH(stretch) - began)) / (endH(stretch) - startH(stretch))
}

/**
 * How many spreads this night lies from a tight one towards one with a fire that began at some hour: the most of all hours (a matched filter). Null where
 * nothing is to be said; 0 where it falls as fast as a tight one or faster.
 */
export function leakZ(night: Fallen, tight: Tight): number | null {
  const told = stretchesOf(night)
  const last = told.at(-1)
  if (last === undefined || told.length < leastStretches || endH(last.at) < leastH || last.at !== night.warmthK.length - 2) return null
  const solve = solverOf(partOf(tight.spread, told.map((s) => s.at), told.map(noiseOf))) // prettier-ignore
  const off = solve(told.map((s) => s.logPerH - (tight.means[s.at] ?? 0)))
  let most = 0
  for (const began of begins) {
    if (began >= endH(last.at) - 0.4) break
    // a watt more takes the larger share of the fall the slower that is
    const shape = told.map((s) => -felt(began, s.at) / Math.max(leastFallKPerH, Math.exp(tight.means[s.at] ?? 0) * s.fromK))
    const towards = dot(shape, off)
    if (towards > 0) most = Math.max(most, towards / Math.sqrt(dot(shape, solve(shape))))
  }
  return most
}
