import type { Act } from '../../contract/actions.ts'
import type { ActId, ChannelId, Estimate, KilnConfig, Ms, NodeId } from '../../contract/fold.ts'
import type { ForecastView, HintView, PhaseSpan } from '../../contract/live.ts'
import { roles, type Role } from '../../contract/vocabulary.ts'
import { startCalls, type CallStates } from '../calls/state.ts'
import { startWindow, type Window } from '../calls/window.ts'
import { startPhase, type PhaseState } from '../phases/phase.ts'
import type { Channel } from './channel.ts'
import { noFacts, type Facts } from './facts.ts'
import { emptyHistory, type History } from './history.ts'

/** All that a kiln's fold knows; plain data only, so that it can be frozen as JSON. `M` is the estimator's own state. */
export interface KilnState<M = unknown> {
  config: KilnConfig
  /** `seq` of the last journalled input: outputs of ticks go on counting `n` under it, live and in a replay alike. */
  cause: number
  n: number
  at: Ms
  nextGridAt: Ms
  channels: Record<ChannelId, Channel>
  lostNodes: Record<NodeId, Ms>
  firing: string | null
  acts: Act[]
  /** Ids already taken, also of the firing before. */
  ids: Record<ActId, true>
  facts: Facts
  phase: PhaseState
  ribbon: PhaseSpan[]
  window: Window
  calls: CallStates
  past: Record<Role, History>
  hints: HintView[]
  model: M | null
  estimate: Estimate | null
  forecast: ForecastView | null
}

export function emptyPast(): Record<Role, History> {
  const past: Partial<Record<Role, History>> = {}
  for (const role of roles) past[role] = emptyHistory()
  return past as Record<Role, History>
}

export function startState<M>(config: KilnConfig): KilnState<M> {
  return {
    config,
    cause: 0,
    n: 0,
    at: 0,
    nextGridAt: 0,
    channels: {},
    lostNodes: {},
    firing: null,
    acts: [],
    ids: {},
    facts: noFacts(),
    phase: startPhase(0),
    ribbon: [],
    window: startWindow(),
    calls: startCalls(0),
    past: emptyPast(),
    hints: [],
    model: null,
    estimate: null,
    forecast: null,
  }
}

export function litAtOf(state: KilnState): Ms | null {
  return state.facts.litAt ?? state.phase.litInferredAt
}
