import type { Ms } from '../../contract/fold.ts'
import { roles, type Role } from '../../contract/vocabulary.ts'
import { stepCalls, type Done, type Proposals } from '../calls/state.ts'
import { stepWindow } from '../calls/window.ts'
import { stepPhase } from '../phases/phase.ts'
import { firingId } from './acts.ts'
import { heardState } from './channel.ts'
import type { Emit } from './emit.ts'
import { write } from './history.ts'
import type { Look } from './look.ts'
import { litAtOf, type KilnState } from './state.ts'

export const gridMs = 10_000

/** One step of 10 s: means of the channels, minutes, phase, calls. */
export function stepGrid(state: KilnState, at: Ms, emit: Emit): void {
  const now = gather(state, at)
  const newMinute = at % 60_000 === 0
  if (newMinute) for (const role of roles) write(state.past[role], at - 1, now[role] ?? null)
  const look: Look = { at, newMinute, now, past: state.past, facts: state.facts, config: state.config, litAt: litAtOf(state) }
  if (newMinute && look.litAt !== null) stepWindow(state.window, look, null)
  if (stepPhase(state.phase, look, state.window)) {
    const open = state.ribbon.at(-1)
    if (open !== undefined) open.to = at
    state.ribbon.push({ phase: state.phase.phase, from: at, to: null })
    if (state.firing === null && state.phase.phase === 'kindling') state.firing = firingId(state, litAtOf(state) ?? at)
    emit.say(at, { kind: 'phase', phase: state.phase.phase, because: state.phase.because })
  }
  for (const change of stepCalls(state.calls, propose(state), done(state), at))
    emit.say(at, { kind: 'call', call: change.call, state: change.state, because: change.because })
}

function gather(state: KilnState, at: Ms): Partial<Record<Role, number>> {
  const now: Partial<Record<Role, number>> = {}
  for (const id in state.channels) {
    const channel = state.channels[id]
    if (channel === undefined) continue
    const { role } = channel
    if (role !== null && now[role] === undefined) {
      if (channel.count > 0) now[role] = channel.sum / channel.count
      else if (channel.value !== null && channel.quality === 'good' && heardState(channel, at) === 'fresh') now[role] = channel.value
    }
    channel.sum = 0
    channel.count = 0
  }
  return now
}

function propose(state: KilnState): Proposals {
  const { window, facts, calls } = state
  if (facts.sealedAt !== null) return {}
  return {
    'start-collecting': { due: window.open && calls['stop-collecting'].state === 'not-yet', withdraw: false, because: window.openBecause },
    'stop-collecting': { due: window.shut && window.open, withdraw: false, because: window.shutBecause },
    seal: { due: state.phase.phase === 'clearing', withdraw: false, because: state.phase.because },
  }
}

function done(state: KilnState): Done {
  const { facts } = state
  const done: Done = {}
  if (facts.startedAt !== null) done['start-collecting'] = facts.startedAt
  if (facts.stoppedAt !== null) done['stop-collecting'] = facts.stoppedAt
  if (facts.stoppedFeedingAt !== null) done['stop-feeding'] = facts.stoppedFeedingAt
  if (facts.sealedAt !== null) done.seal = facts.sealedAt
  if (facts.openedAt !== null) done.open = facts.openedAt
  return done
}
