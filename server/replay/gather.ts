import type { Act } from '../contract/actions.ts'
import type { Ms, Output, Reason } from '../contract/fold.ts'
import type { Role } from '../contract/vocabulary.ts'
import { documentOf } from '../runtime/entry.ts'
import type { Driver } from '../runtime/driver.ts'
import type { Played } from '../recordings/play.ts'

/** A stretch in which a probe that was heard before gave no number. */
export interface Gap {
  role: Role
  from: Ms
  to: Ms
}

/** What a replay told and what was logged, kept to be worded; forecasts only where a phase has just changed. */
export interface Gathered {
  outputs: Exclude<Output, { kind: 'estimate' | 'hint' | 'forecast' | 'lesson' }>[]
  forecasts: Extract<Output, { kind: 'forecast' }>[]
  acts: Act[]
  hints: Map<string, number>
  /** Why no call to open was to be waited for. */
  untold: Reason[]
  /** Condensate so far by the ensemble, kg, at each telling. */
  ran: { at: Ms; kg: number }[]
  heard: Set<string>
  gaps: Gap[]
  readings: number
  refused: Record<string, number>
  failures: number
  endAt: Ms
}

const shortestGapMs = 600_000 // as long as the estimator stands still for (ten silent minutes)

/** Plays to the end. */
export function gather<I, K>(steps: Generator<Played, Driver<I, K>>): Gathered {
  const heardAt = new Map<Role, Ms>()
  let fresh: Ms | 'waiting' | null = null
  const all: Gathered = {
    outputs: [],
    forecasts: [],
    acts: [],
    hints: new Map(),
    untold: [],
    ran: [],
    heard: new Set(),
    gaps: [],
    readings: 0,
    refused: {},
    failures: 0,
    endAt: 0,
  }
  const tell = (output: Output): void => {
    if (output.kind === 'hint') {
      all.hints.set(output.hint, (all.hints.get(output.hint) ?? 0) + 1)
      if (output.hint === 'open-untold') all.untold = output.because
    } else if (output.kind === 'estimate') {
      if (output.estimate.from === 'ensemble') all.ran.push({ at: output.at, kg: output.estimate.condensateKg })
    } else if (output.kind === 'forecast') {
      if (fresh === 'waiting') fresh = output.at
      if (fresh === output.at) all.forecasts.push(output)
    } else if (output.kind !== 'lesson') {
      all.outputs.push(output)
      if (output.kind === 'phase') fresh = 'waiting'
    }
  }
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) {
      for (const [role, last] of heardAt) if (all.endAt - last > shortestGapMs) all.gaps.push({ role, from: last, to: all.endAt })
      all.refused = step.value.state.refused
      return all
    }
    const { at, entry, effects } = step.value
    all.endAt = at
    if (entry?.kind === 'act') all.acts.push(documentOf<Act>(entry))
    for (const effect of effects) {
      if (effect.kind === 'output') tell(effect.output)
      if (effect.kind === 'failed') all.failures++
      if (effect.kind !== 'point' || effect.point.role === 'smoke-estimated') continue
      const { role, t, value } = effect.point
      all.readings++
      if (value === null) continue
      const last = heardAt.get(role)
      if (last !== undefined && t - last > shortestGapMs) all.gaps.push({ role, from: last, to: t })
      all.heard.add(role)
      heardAt.set(role, Math.max(last ?? t, t))
    }
  }
}
