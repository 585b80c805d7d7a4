import type { Estimate, KilnConfig, Reason } from '../../contract/fold.ts'
import type { Known, Prior } from '../../contract/learnt.ts'
import { ensemble } from './ensemble.ts'
import type { TimeRange } from '../../contract/live.ts'
import { type Horizon, type Hours, horizonOf } from './learned/horizon.ts'
import { type JudgeState, startJudge, stepJudge } from './learned/judge.ts'
import type { Network } from './learned/network.ts'
import { signsOf } from './learned/signs.ts'
import { horizons } from './learned/tables/horizon.ts'
import { judges } from './learned/tables/judge.ts'
import { markWorth } from './mark.ts'
import { freeze, thaw } from './pack.ts'
import { rangeFrom, rangeSigns } from './range.ts'
import { withRecord } from './record.ts'
import type { EnsembleState } from './shape.ts'
import { ranges } from './tables/range.ts'
import type { Advice, Estimator, EstimatorForecast, GridReadings } from './types.ts'

// Two opinions on the stop that err in different ways: the ensemble knows physics and holds one kiln model, the judge knows many
// kilns and no physics. On firings that neither had seen their mean earned more than either, and the settings around these alike.
// So it is with the forecasts: what the members make of this kiln, and how long firings with such signs have taken.

/** Share of the ensemble in the common worth. */
const ensembleShare = 0.55
/** The ensemble's worth in kg/h is squeezed to -1..1 at this scale, so that a strong flow does not outvote the judge. */
const squeezeKgH = 1.5
/**
 * The common worth, -2..1, under which a stop is advised; a late stop costs six times an early one. Under -0.35 the ensemble could veto any
 * stop (0.55 - 2 * 0.45). On 209 unseen firings -0.25 and -0.45 earned as much; what earned more was to wait less (`calls/window.ts`).
 */
const stopBelow = -0.34
const stopMinutes = 2
const smokeSilentMin = 10
const hourMs = 3_600_000

export interface PairState<M> {
  ensemble: M
  judge: JudgeState
  worth: KilnConfig['worth']
  common: number | null
  /** The wall at which earlier firings had to stop; null where none knew. */
  mark: Known | null
  /** How long earlier firings took to their stop, see `Prior`; null where none told. */
  record: Known | null
  /** Hottest of the smoothed wall so far, °C. */
  hottestC: number
  downMinutes: number
  start: boolean
  stop: boolean
}

/** Both on the same readings: the ensemble estimates; stop and forecasts come from the two together. */
export function pairOf<M>(first: Estimator<M>, networks: readonly Network[], forecasters: readonly Network[]): Estimator<PairState<M>> {
  return {
    version: 1000 * first.version + 9,
    start: (config) => ({
      ensemble: first.start(config),
      judge: startJudge(config.charge),
      worth: config.worth,
      common: null,
      mark: config.prior?.stop ?? null,
      record: config.prior?.hours ?? null,
      hottestC: -273,
      downMinutes: 0,
      start: false,
      stop: false,
    }),
    step(state, readings, evidence) {
      state.ensemble = first.step(state.ensemble, readings, evidence)
      for (const one of evidence) if (one.kind === 'known' && state.common === null) take(state, one.prior)
      stepJudge(state.judge, withStandIn(state.judge.memory, readings, first.estimate(state.ensemble)), evidence, networks, state.worth)
      if (state.judge.steps === 0) weigh(state, first.advice(state.ensemble))
      return state
    },
    estimate: (state) => first.estimate(state.ensemble),
    advice(state) {
      const advice = first.advice(state.ensemble)
      const { shares } = state.judge
      if (shares === null || state.common === null) return advice
      const because = advice.because['stop-collecting'] ?? []
      const reasons = [...markReason(state), ...because, { code: 'learned-tar', value: shares[2] }]
      return {
        ...advice,
        startCollecting: state.start,
        stopCollecting: state.stop,
        because: { ...advice.because, 'stop-collecting': reasons },
      }
    },
    forecast(state) {
      const own = first.forecast(state.ensemble)
      const horizon = horizonNow(state, forecasters)
      return horizon === null ? own : { ...own, calls: recorded(state, own.view.at, together(own, horizon)) }
    },
    lesson: (state) => first.lesson(state.ensemble),
    freeze(state) {
      const { ensemble: inner, ...rest } = state
      const bytes = first.freeze(inner)
      const own = freeze(rest)
      const all = new Uint8Array(4 + own.length + bytes.length)
      new DataView(all.buffer).setUint32(0, own.length)
      all.set(own, 4)
      all.set(bytes, 4 + own.length)
      return all
    },
    thaw(bytes) {
      const length = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0)
      const own = thaw(bytes.subarray(4, 4 + length)) as Omit<PairState<M>, 'ensemble'>
      return { ...own, ensemble: first.thaw(bytes.subarray(4 + length)) }
    },
  }
}

/** Minutes that a smoke probe was heard before the ensemble, in step with it, stands in for it. Common practice, no source. */
const inStepMinutes = 60

/** The judge goes on with the smoke that the ensemble takes the probe's place with: without, it would begin anew as if none had been fitted. */
function withStandIn({ smoke }: JudgeState['memory'], readings: GridReadings, estimate: Estimate | null): GridReadings {
  if (readings.smokeC !== null || estimate === null || smoke.length < inStepMinutes) return readings
  return { ...readings, smokeC: estimate.smokeC }
}

/**
 * Once a minute: the common worth, and whether it has been low for long enough. A stop stands until the worth is clearly back. A start waits
 * until the judge too sees more than water: the ensemble takes a fire that sinks over steaming wood for the beginning of the acids, and
 * starting late costs next to nothing.
 */
function weigh<M>(state: PairState<M>, { collectWorthPerH: ensembleWorthKgH, startCollecting }: Advice): void {
  const { worth: judged, shares } = state.judge
  if (judged === null || shares === null || ensembleWorthKgH === null) return
  state.start ||= startCollecting && (judged > 0 || shares[2] > shares[1])
  state.hottestC = Math.max(state.hottestC, state.judge.memory.smoothWall.at(-1) ?? state.hottestC)
  const mark = smokeLives(state.judge) ? null : state.mark
  const both = ensembleShare * Math.tanh(ensembleWorthKgH / squeezeKgH) + (1 - ensembleShare) * judged
  state.common = both + markWorth(mark, state.hottestC, state.worth)
  state.downMinutes = state.common < stopBelow ? state.downMinutes + 1 : 0
  state.stop = state.downMinutes >= stopMinutes || (state.stop && state.common < 0)
}

function take<M>(state: PairState<M>, prior: Prior | undefined): void {
  state.mark = prior?.stop ?? null
  state.record = prior?.hours ?? null
}

/** A smoke probe that lives knows more than where the wall stood, and how long it took, in other firings. */
const smokeLives = ({ memory: { smokeHeardAt, minute } }: JudgeState): boolean =>
  smokeHeardAt !== null && minute - smokeHeardAt < smokeSilentMin

/** The wall is over where it stood when earlier firings of this kiln had to stop. */
function markReason<M>({ mark, hottestC }: PairState<M>): Reason[] {
  return mark !== null && hottestC >= mark.mean ? [{ code: 'wall-over-earlier', value: hottestC, limit: mark.mean }] : []
}

const heard = { 'start-collecting': 'start', 'stop-collecting': 'stop', seal: 'seal' } as const

function horizonNow<M>({ judge: { memory } }: PairState<M>, forecasters: readonly Network[]): Horizon | null {
  return memory.litMinute === null || memory.smoothWall.length === 0 ? null : horizonOf(forecasters, signsOf(memory))
}

type Heard = keyof typeof heard
const heardCalls = Object.keys(heard) as Heard[]

/** What each range is told from; the learned opinion stands for the ensemble's where that has none yet. */
function signsFrom({ calls, view }: EstimatorForecast, horizon: Horizon): Record<Heard, number[]> {
  const signs = (call: Heard): number[] => {
    const learned = horizon[heard[call]]
    const own = calls[call]
    return rangeSigns(own === undefined ? learned : hoursTo(view.at, own), learned)
  }
  return { 'start-collecting': signs('start-collecting'), 'stop-collecting': signs('stop-collecting'), seal: signs('seal') }
}

function together(own: EstimatorForecast, horizon: Horizon): EstimatorForecast['calls'] {
  const signs = signsFrom(own, horizon)
  const both: EstimatorForecast['calls'] = {}
  for (const call of heardCalls) both[call] = rangeAt(own.view.at, rangeFrom(ranges[heard[call]], signs[call]))
  return both
}

/** The stop beside how long it took in earlier firings of this kiln. */
function recorded<M>({ record, judge }: PairState<M>, at: number, calls: EstimatorForecast['calls']): EstimatorForecast['calls'] {
  const stop = calls['stop-collecting']
  const { litMinute, minute } = judge.memory
  if (record === null || stop === undefined || litMinute === null || smokeLives(judge)) return calls
  return { ...calls, 'stop-collecting': rangeAt(at, withRecord(hoursTo(at, stop), record, (minute - litMinute) / 60)) }
}

/** Hours from `at` to the edges of a range. */
const hoursTo = (at: number, { earliest, likely, latest }: TimeRange): Hours => [
  (earliest - at) / hourMs,
  (likely - at) / hourMs,
  (latest - at) / hourMs,
]

const rangeAt = (at: number, [low, middle, high]: Hours): TimeRange => ({
  earliest: at + low * hourMs,
  likely: at + middle * hourMs,
  latest: at + high * hourMs,
})

/** The estimator that the service runs. */
export const pair: Estimator<PairState<EnsembleState>> = pairOf(ensemble, judges, horizons)

/** What the ranges of this moment are told from, for who fits them; null before there is anything. */
export function rangeSignsNow(state: PairState<EnsembleState>): Record<Heard, number[]> | null {
  const horizon = horizonNow(state, horizons)
  return horizon === null ? null : signsFrom(ensemble.forecast(state.ensemble), horizon)
}
