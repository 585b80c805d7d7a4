import type { Fallen } from '../../contract/learnt.ts'
import type { Before } from './state.ts'

// How a night fell, from its seal on: the wall over what its cover felt at fixed hours, and how fast it fell between them.

/** Ends of the stretches over which the fall is taken, in ten-minute points from the seal: half hours for four hours, then hours, then two. */
export const edges: readonly number[] = [
  0, 3, 6, 9, 12, 15, 18, 21, 24, 30, 36, 42, 48, 54, 60, 66, 72, 78, 84, 90, 96, 108, 120, 132, 144, 156, 168, 180,
]
export const stretches = edges.length - 1
const perHour = 6
export const endH = (stretch: number): number => (edges[stretch + 1] ?? 0) / perHour
export const startH = (stretch: number): number => (edges[stretch] ?? 0) / perHour

/** Nearer to the air the weather moves the wall as much, K. */
const leastK = 18
const leastPerH = 0.004

export interface Stretch {
  at: number
  /** Logarithm of the fall per hour. */
  logPerH: number
  /** Warmth at its beginning, K, and what was lost over it, K. */
  fromK: number
  lostK: number
}

/** The stretches that tell something. */
export function stretchesOf({ warmthK }: Fallen): Stretch[] {
  const told: Stretch[] = []
  for (let at = 0; at + 1 < warmthK.length; at++) {
    const fromK = warmthK[at] ?? 0
    const toK = warmthK[at + 1] ?? 0
    if (fromK <= leastK || toK <= leastK) continue
    const hours = endH(at) - startH(at)
    const perH = Math.max(leastPerH, Math.log(fromK / toK) / hours)
    told.push({ at, logPerH: Math.log(perH), fromK, lostK: fromK * perH * hours })
  }
  return told
}

const within = (value: number, most: number): number => Math.max(-most, Math.min(most, value))

/** What of the fire before the seal moves the fall of a tight night, in the order of the table. */
export function conditionsOf(before: Before, firstK: number): number[] {
  const warm = Math.log(Math.max(20, firstK) / 150)
  const hour = within((before.hourShare ?? 1) - 1, 0.8)
  const three = within((before.threeHoursShare ?? 1) - 1, 1)
  const burnt = Math.log(before.burntH / 9)
  const fire = before.fireC === null ? 0 : within((before.fireC - 600) / 100, 2)
  const wood = before.woodKg === null ? 0 : Math.log(before.woodKg / 55)
  return [
    1,
    warm,
    warm * warm,
    hour,
    hour * hour,
    three,
    three * three,
    hour * three,
    burnt,
    burnt * burnt,
    warm * three,
    warm * hour,
    fire,
    wood,
  ]
}
