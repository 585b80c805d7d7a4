import type { Act } from '../../contract/actions.ts'
import type { Input, Ms } from '../../contract/fold.ts'
import { factsOf } from './facts.ts'
import { evidenceOf } from './model.ts'
import { markRun } from './run.ts'
import { freshFiring, type KilnState } from './state.ts'

/** Enters one act in the log; false when its id was known already. */
export function takeAct(state: KilnState, input: Extract<Input, { kind: 'act' }>): boolean {
  if (state.ids[input.id] !== undefined) return false
  const begins = input.act.action === 'load' || input.act.action === 'light' ? input.act.action : null
  if (begins !== null && input.corrects === undefined && isOver(state, begins)) beginFiring(state, input.doneAt)
  state.ids[input.id] = true
  const { id, at, doneAt, act, corrects } = input
  const entry: Act = { id, at, doneAt, act, ...(corrects === undefined ? {} : { corrects }) }
  state.acts.push(entry)
  if (state.firing === null && (begins !== null || act.action === 'seal')) state.firing = firingId(state, doneAt)
  state.facts = factsOf(state.acts)
  state.evidence.push(...evidenceOf(entry))
  markRun(state.run, entry, state.estimate)
  return true
}

export function firingId(state: KilnState, at: Ms): string {
  return `${state.config.kiln}-${Math.floor(at / 1000)}`
}

/** A firing is over once its kiln was opened or unloaded, logged or not: nobody loads or lights a sealed one. One that failed may be lit again. */
function isOver(state: KilnState, begins: 'load' | 'light'): boolean {
  const { facts } = state
  if (facts.unloadedAt !== null || facts.openedAt !== null || facts.sealedAt !== null) return true
  return state.phase.phase === 'failed' && begins === 'load'
}

export function beginFiring(state: KilnState, at: Ms): void {
  const before: Record<string, true> = {}
  for (const act of state.acts) before[act.id] = true
  state.ids = before
  state.acts = []
  state.firing = firingId(state, at)
  state.model = null
  Object.assign(state, freshFiring(at))
}
