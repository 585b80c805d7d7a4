import type { Look } from '../../../server/domain/firing/look.ts'
import type { Cooling } from '../../../server/domain/cooling/state.ts'
import { leadMin, type Course } from './course.ts'

/** Looks at the fold's own record of the night, once a minute. */
export type Signs = (cooling: Cooling, minute: number, look: Look) => void

/** Air that burns less than this in the mean of its first hour is no fire yet, W. */
const leastW = 30

/** Minutes from the seal at which the leak began to burn; null where none does: then there is nothing that any probe could tell. */
export function burnsAt(course: Course): number | null {
  const { leak, burningW } = course
  if (leak === null) return null
  const from = Math.round(leak.fromH * 60)
  for (let minute = from; minute + leadMin + 60 <= burningW.length; minute += 30) {
    let sum = 0
    for (let i = 0; i < 60; i++) sum += burningW[minute + leadMin + i] ?? 0
    if (sum / 60 >= leastW) return minute
  }
  return null
}
