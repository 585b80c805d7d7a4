import type { Bottle, ClauseResult } from '../../contract/lots.ts'

/**
 * The window of the smoke at the mouth of the chimney. Only a probe that stood there can show it: estimated smoke, a probe elsewhere,
 * or smoke outside the window leave the claim open ("not measured"), which is not a fault of the liquid.
 */
export function smokeWindow(bottles: readonly Bottle[], asked: { fromC: number; belowC: number; source: string }): ClauseResult {
  const base = { clause: 'smoke-window' as const, low: asked.fromC, high: asked.belowC, wanted: [], source: asked.source }
  const range = smokeRange(bottles)
  const measured = range === null ? null : `${String(range.lowC)} - ${String(range.highC)}`
  const because = doubt(bottles, asked)
  return { ...base, verdict: because === null ? 'pass' : 'not-measured', measured, because }
}

/** From the coolest to the hottest smoke of all bottles; null where one has none. */
export function smokeRange(bottles: readonly Bottle[]): { lowC: number; highC: number } | null {
  let lowC = Number.POSITIVE_INFINITY
  let highC = Number.NEGATIVE_INFINITY
  for (const { smoke } of bottles) {
    if (smoke === null) return null
    lowC = Math.min(lowC, smoke.lowC)
    highC = Math.max(highC, smoke.highC)
  }
  return bottles.length === 0 ? null : { lowC, highC }
}

function doubt(bottles: readonly Bottle[], asked: { fromC: number; belowC: number }): string | null {
  if (bottles.length === 0) return 'smoke-unknown'
  for (const { smoke } of bottles) {
    if (smoke === null) return 'smoke-unknown'
    if (smoke.by === 'estimate') return 'smoke-estimated'
    if (smoke.probeAt !== 'chimney-mouth') return 'probe-not-at-mouth'
    if (smoke.highC >= asked.belowC) return 'stopped-above-window'
    if (smoke.lowC < asked.fromC) return 'started-below-window'
  }
  return null
}
