import type { Act } from '../../contract/actions.ts'
import type { Ms } from '../../contract/fold.ts'
import type { Bottle, ProbePlace } from '../../contract/lots.ts'

export interface SmokeLine {
  t: readonly Ms[]
  value: readonly (number | null)[]
  by: 'probe' | 'estimate'
  probeAt: ProbePlace | null
}

/** What a firing's own log says of its bottles and its charcoal. A bottle whose litres nobody logged has none and must be given them. */
export interface Collected {
  bottles: (Omit<Bottle, 'volumeMl'> & { volumeMl: number | null })[]
  charcoalG: number | null
  finesG: number | null
}

/**
 * Bottles from the log: the first begins with collecting, each ends where it was taken away, the last where collecting stopped.
 * @param acts in any order; corrected ones count as their correction says
 * @param ended where the log stops, for a last bottle that nobody closed
 */
export function collectedFrom(acts: readonly Act[], smoke: SmokeLine | null, ended: Ms): Collected {
  const done = latestWords(acts)
  const bottles: Collected['bottles'] = []
  let from: Ms | null = null
  const close = (to: Ms, volumeMl: number | null): void => {
    if (from !== null && (to > from || volumeMl !== null)) {
      bottles.push({ number: bottles.length + 1, volumeMl, from, to, smoke: rangeWithin(smoke, from, to) })
    }
  }
  let charcoalG: number | null = null
  let finesG: number | null = null
  for (const { doneAt, act } of done) {
    if (act.action === 'start-collecting') from ??= doneAt
    else if (act.action === 'swap-bottle') {
      close(doneAt, act.litres === undefined ? null : Math.round(act.litres * 1000))
      if (from !== null) from = doneAt
    } else if (act.action === 'stop-collecting') {
      // a bottle taken away at the stop itself was already closed
      if (from !== null && doneAt - from > 60_000) close(doneAt, null)
      from = null
    } else if (act.action === 'unload') {
      charcoalG = act.charcoalKg === undefined ? charcoalG : Math.round(act.charcoalKg * 1000)
      finesG = act.finesKg === undefined ? finesG : Math.round(act.finesKg * 1000)
    }
  }
  if (from !== null) close(ended, null)
  return { bottles, charcoalG, finesG }
}

/** Each act as its newest correction says, in the order in which things were done. */
export function latestWords(acts: readonly Act[]): Act[] {
  const root = new Map<string, string>()
  const newest = new Map<string, Act>()
  for (const act of [...acts].sort((a, b) => a.at - b.at)) {
    const first = act.corrects === undefined ? act.id : (root.get(act.corrects) ?? act.corrects)
    root.set(act.id, first)
    newest.set(first, act)
  }
  return [...newest.values()].sort((a, b) => a.doneAt - b.doneAt)
}

function rangeWithin(smoke: SmokeLine | null, from: Ms, to: Ms): Bottle['smoke'] {
  if (smoke === null) return null
  let lowC = Number.POSITIVE_INFINITY
  let highC = Number.NEGATIVE_INFINITY
  smoke.t.forEach((t, index) => {
    const value = smoke.value[index] ?? null
    if (t < from || t > to || value === null) return
    lowC = Math.min(lowC, value)
    highC = Math.max(highC, value)
  })
  if (lowC > highC) return null
  return { lowC: Math.round(lowC * 10) / 10, highC: Math.round(highC * 10) / 10, by: smoke.by, probeAt: smoke.probeAt }
}
