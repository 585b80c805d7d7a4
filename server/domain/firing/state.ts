import type { Act } from '../../contract/actions.ts'
import type { ActId, ChannelId, Estimate, KilnConfig, Ms, NodeId } from '../../contract/fold.ts'
import type { Lesson } from '../../contract/learnt.ts'
import type { ForecastView, HintView, PhaseSpan } from '../../contract/live.ts'
import { roles, type HealthCode, type HintCode, type Role } from '../../contract/vocabulary.ts'
import { emptyBoard, type AlarmBoard } from '../alarms/board.ts'
import { startFire } from '../alarms/fire.ts'
import type { FireWatch } from '../alarms/scene.ts'
import { startCalls, type CallStates } from '../calls/state.ts'
import { startWindow, type Window } from '../calls/window.ts'
import { startCondenser, type CondenserWatch } from '../condenser/watch.ts'
import type { ColdStart, Cooling } from '../cooling/state.ts'
import type { OpenJudgement } from '../cooling/open.ts'
import type { Advice, Evidence } from '../estimate/types.ts'
import { startPhase, type PhaseState } from '../phases/phase.ts'
import type { Channel } from './channel.ts'
import { startRun, type Run } from './run.ts'
import { noFacts, type Facts } from './facts.ts'
import { emptyHistory, type History } from './history.ts'
import type { Look } from './look.ts'

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
  health: Partial<Record<HealthCode, Ms>>
  firing: string | null
  acts: Act[]
  /** Ids already taken, also of the firing before. */
  ids: Record<ActId, true>
  facts: Facts
  /** Means of the last 10 s. */
  now: Partial<Record<Role, number>>
  past: Record<Role, History>
  phase: PhaseState
  ribbon: PhaseSpan[]
  window: Window
  calls: CallStates
  cold: ColdStart
  cooling: Cooling | null
  open: OpenJudgement | null
  openNotBefore: Ms | null
  condenser: CondenserWatch
  fire: FireWatch
  board: AlarmBoard
  hints: HintView[]
  /** When each hint was last said, and for when. */
  said: Partial<Record<HintCode, { at: Ms; by: Ms }>>
  model: M | null
  evidence: Evidence[]
  advice: Advice | null
  estimate: Estimate | null
  forecast: ForecastView | null
  forecastAt: Ms | null
  run: Run
  /** What the call to stop teaches, told with the seal. */
  stopTaught: Lesson[]
  /** Parts of what this firing teaches of its kiln that were told. */
  taught: Lesson['part'][]
}

/** What belongs to one firing, as it stands at its beginning. */
export function freshFiring(
  at: Ms,
): Pick<
  KilnState,
  | 'phase'
  | 'ribbon'
  | 'window'
  | 'calls'
  | 'cooling'
  | 'open'
  | 'openNotBefore'
  | 'condenser'
  | 'fire'
  | 'hints'
  | 'said'
  | 'evidence'
  | 'advice'
  | 'estimate'
  | 'forecast'
  | 'forecastAt'
  | 'run'
  | 'stopTaught'
  | 'taught'
> {
  return {
    phase: startPhase(at),
    ribbon: [],
    window: startWindow(),
    calls: startCalls(at),
    cooling: null,
    open: null,
    openNotBefore: null,
    condenser: startCondenser(),
    fire: startFire(),
    hints: [],
    said: {},
    evidence: [],
    advice: null,
    estimate: null,
    forecast: null,
    forecastAt: null,
    run: startRun(),
    stopTaught: [],
    taught: [],
  }
}

function emptyPast(): Record<Role, History> {
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
    health: {},
    firing: null,
    acts: [],
    ids: {},
    facts: noFacts(),
    now: {},
    past: emptyPast(),
    cold: { wallOverAirK: null },
    board: emptyBoard(),
    model: null,
    ...freshFiring(0),
  }
}

export function litAtOf(state: KilnState): Ms | null {
  return state.facts.litAt ?? state.phase.litInferredAt
}

/** Somebody tends the kiln: from loading or lighting until it is unloaded. */
export function isTended(state: KilnState): boolean {
  const { facts } = state
  if (facts.unloadedAt !== null) return false
  return facts.loadedAt !== null || litAtOf(state) !== null
}

export function lookAt(state: KilnState, at: Ms): Look {
  return { at, now: state.now, past: state.past, facts: state.facts, config: state.config, litAt: litAtOf(state) }
}
