import type { Charge, Estimate, KilnConfig, Ms } from '../../contract/fold.ts'
import type { Lesson } from '../../contract/learnt.ts'
import type { ForecastView, TimeRange } from '../../contract/live.ts'
import type { DripLook, Opening, SmokeLook } from '../../contract/vocabulary.ts'
import { stateLength } from '../kiln/layout.ts'
import { unknownCount, valuesLength } from '../kiln/parameters.ts'
import { knownOf } from './known.ts'
import { emptyRunOn, type RunOn } from './runon.ts'
import { featureCount, type Heat } from './features.ts'
import { emptySealed, type Sealed } from './sealed.ts'
import { emptyStandIn, type StandIn } from './stand-in.ts'
import { emptyStanding, type Standing } from './standing.ts'
import { gridsPerBeat, historyBeats, memberCount } from './size.ts'

/** What was seen, with the beat of the firing it was seen in. */
export interface Seen {
  beat: number
  drip?: DripLook
  smoke?: SmokeLook
}

/** Members of the ensemble: latents, physical values, kiln states, log-likelihoods, log-weights. */
export interface Members {
  latents: Float64Array
  values: Float64Array
  kilns: Float64Array
  fits: Float64Array
  weights: Float64Array
}

/** Medians of each beat since lighting; NaN where there was no reading. */
export interface History {
  length: number
  fire: Float32Array
  outlet: Float32Array
  wall: Float32Array
  smoke: Float32Array
  /** Share of the full draught that mouth and chimney let through. */
  air: Float32Array
}

/** A member's move in the making: latents proposed, run through the history from its first beat. */
export interface Move {
  member: number
  /** Beats of the history that its turn has come to, and those that it has lived. */
  beat: number
  lived: number
  fit: number
  afresh: boolean
  latents: Float64Array
  values: Float64Array
  kiln: Float64Array
}

export function emptyMembers(count: number): Members {
  return {
    latents: new Float64Array(count * unknownCount),
    values: new Float64Array(count * valuesLength),
    kilns: new Float64Array(count * stateLength),
    fits: new Float64Array(count),
    weights: new Float64Array(count),
  }
}

export function emptyHistory(): History {
  return {
    length: 0,
    fire: new Float32Array(historyBeats),
    outlet: new Float32Array(historyBeats),
    wall: new Float32Array(historyBeats),
    smoke: new Float32Array(historyBeats),
    air: new Float32Array(historyBeats),
  }
}

export function emptyMove(): Move {
  return {
    member: -1,
    beat: 0,
    lived: 0,
    fit: 0,
    afresh: false,
    latents: new Float64Array(unknownCount),
    values: new Float64Array(valuesLength),
    kiln: new Float64Array(stateLength),
  }
}

export interface EnsembleState {
  config: KilnConfig
  charge: Charge
  /** Where the members begin, see `knownOf`; null without lessons of this kiln. */
  known: Float64Array | null
  word: Uint32Array
  at: Ms
  /** -1 while not lit, not sealed. */
  litAt: Ms
  sealedAt: Ms
  mouth: Opening
  chimney: Opening
  /** Air at the kiln, °C. */
  airC: number
  /** The newest cold readings before lighting, oldest first, °C. */
  cold: number[]
  /** Grid readings of the beat in the making, one row a channel: fire, wall, outlet, smoke, ambient, core. */
  beat: Float32Array
  filled: number
  /** Beats in a row in which no probe spoke. */
  silent: number
  members: Members
  /** Normalised. */
  weights: Float64Array
  history: History
  seen: Seen[]
  move: Move
  run: RunOn
  sealed: Sealed
  /** Features of the learned correction, as of the last beat. */
  features: Float64Array
  /** Smoke as corrected minus the members' own, K. */
  smokeShiftK: number
  standIn: StandIn
  heat: Heat
  standing: Standing
  /** Beat at which charring was first nearly done; -1 before. */
  nearBeat: number
  /** When each call will come, as the members' own run-on has it. */
  ranges: { start: TimeRange | null; stop: TimeRange | null; seal: TimeRange | null }
  view: ForecastView['smoke']
  estimate: Estimate | null
  /** What the firing taught of its kiln, once it is sealed. */
  lesson: Lesson | null
  tried: number
  taken: number
}

export const channelRows = 6

export function emptyState(config: KilnConfig): EnsembleState {
  return {
    config,
    charge: config.charge,
    known: knownOf(config.prior),
    word: new Uint32Array([config.seed >>> 0]),
    at: 0,
    litAt: -1,
    sealedAt: -1,
    mouth: 'open',
    chimney: 'open',
    airC: 20,
    cold: [],
    beat: new Float32Array(channelRows * gridsPerBeat).fill(NaN),
    filled: 0,
    silent: 0,
    members: emptyMembers(memberCount),
    weights: new Float64Array(memberCount).fill(1 / memberCount),
    history: emptyHistory(),
    seen: [],
    move: emptyMove(),
    run: emptyRunOn(),
    sealed: emptySealed(),
    features: new Float64Array(featureCount),
    smokeShiftK: 0,
    standIn: emptyStandIn(),
    heat: { all: 0, since160: 0 },
    standing: emptyStanding(),
    nearBeat: -1,
    ranges: { start: null, stop: null, seal: null },
    view: [],
    estimate: null,
    lesson: null,
    tried: 0,
    taken: 0,
  }
}
