import type { Fallen } from '../../../server/contract/learnt.ts'
import { burnsAt, type Signs } from './burning.ts'
import { follow } from './follow.ts'
import { nightOf } from './kin.ts'
import { phase, type Phase } from './phases.ts'
import type { Core } from './probes.ts'
import { resultOf, type Result } from './sums.ts'

/** One phase from beginning to end. */
export const runPhase = (n: number, core: Core = 'some'): Result => runNight(phase(n, 'any', core), []).result

/** One night of a kiln with `behind` it, and what lies behind the next one. */
function runNight({ name, course, readings }: Phase, behind: readonly Fallen[]): { result: Result; behind: readonly Fallen[] } {
  const burns = burnsAt(course)
  const signs: Result['signs'] = { inTime: -Infinity, ever: -Infinity, tight: -Infinity }
  let seen = 0
  const look: Signs = ({ leakZ, warmthK }, minute) => {
    if (warmthK.length === seen) return
    seen = warmthK.length
    const when = burns === null || minute < burns ? 'tight' : minute <= burns + 180 ? 'inTime' : 'ever'
    signs[when] = Math.max(signs[when], leakZ ?? -Infinity)
  }
  const followed = follow(course, readings, null, look, behind)
  return { result: resultOf(name, course, readings, followed, signs), behind: followed.behind }
}

/** So many nights behind the one that is judged. */
export const nightsBehind = [0, 1, 2, 4] as const
/** Nights that a kiln had before; of some nothing is kept. */
const before = 6

/**
 * A kiln's first nights as they come, leaks among them, and then one day with three nights: a tight one and two that leak, each judged with none, one, two
 * and four nights behind it. Empty where fewer than four are kept, so that all are judged on the same nights.
 */
export function runKiln(kiln: number): { behind: number; result: Result }[] {
  const most = Math.max(...nightsBehind)
  let behind: readonly Fallen[] = []
  for (let day = 0; day < before && behind.length < most; day++) behind = runNight(nightOf(kiln, day, 'any'), behind).behind
  const results: { behind: number; result: Result }[] = []
  if (behind.length < most) return results
  for (const other of [0, 1, 2]) {
    const today = nightOf(kiln, before, other === 0 ? 'tight' : 'leak', other)
    for (const n of nightsBehind) results.push({ behind: n, result: runNight(today, behind.slice(0, n)).result })
  }
  return results
}
