import { burnsAt, type Signs } from './burning.ts'
import { follow } from './follow.ts'
import { phase } from './phases.ts'
import type { Core } from './probes.ts'
import { resultOf, type Result } from './sums.ts'

/** One phase from beginning to end. */
export function runPhase(n: number, core: Core = 'some'): Result {
  const { name, course, readings } = phase(n, 'any', core)
  const burns = burnsAt(course)
  const signs: Result['signs'] = { inTime: -Infinity, ever: -Infinity, tight: -Infinity }
  let before = -Infinity
  const look: Signs = ({ leakSign }, minute) => {
    if (minute % 10 !== 0) return
    const now = leakSign ?? -Infinity
    const stood = Math.min(before, now)
    before = now
    const when = burns === null || minute < burns ? 'tight' : minute <= burns + 180 ? 'inTime' : 'ever'
    signs[when] = Math.max(signs[when], stood)
  }
  return resultOf(name, course, readings, follow(course, readings, null, look), signs)
}
