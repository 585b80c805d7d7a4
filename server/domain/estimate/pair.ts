import type { KilnConfig } from '../../contract/fold.ts'
import { ensemble } from './ensemble.ts'
import type { TimeRange } from '../../contract/live.ts'
import { type Horizon, type Hours, horizonOf } from './learned/horizon.ts'
import { type JudgeState, startJudge, stepJudge } from './learned/judge.ts'
import type { Network } from './learned/network.ts'
import { signsOf } from './learned/signs.ts'
import { horizons } from './learned/tables/horizon.ts'
import { judges } from './learned/tables/judge.ts'
import { freeze, thaw } from './pack.ts'
import type { EnsembleState } from './shape.ts'
import type { Estimator, EstimatorForecast } from './types.ts'

// Two opinions on the stop that err in different ways: the ensemble knows physics and holds one kiln model, the judge knows many
// kilns and no physics. On firings that neither had seen their mean earned more than either, and the settings around these alike.
// So it is with the forecasts: what the members make of this kiln, and how long firings with such signs have taken.

/** Share of the ensemble in the common worth. */
const ensembleShare = 0.55
/** The ensemble's worth in kg/h is squeezed to -1..1 at this scale, so that a strong flow does not outvote the judge. */
const squeezeKgH = 1.5
/**
 * The common worth, -2..1, under which a stop is advised; a late stop costs six times an early one. At -0.4 the ensemble could veto any
 * stop (0.55 - 2 * 0.45): on 39 unseen firings with three probes that earned 0.47, -0.25 earned 0.53, and on the practice kilns both alike.
 */
const stopBelow = -0.25
const stopMinutes = 2
/** Share of the ensemble in the common forecast. */
const ensembleForecastShare = 0.4
/** Either alone is honest about its own doubt; the mean of both is surer than either. */
const narrowed = 0.85
const hourMs = 3_600_000

export interface PairState<M> {
  ensemble: M
  judge: JudgeState
  worth: KilnConfig['worth']
  common: number | null
  downMinutes: number
  stop: boolean
}

/** Both on the same readings: the ensemble estimates; stop and forecasts come from the two together. */
export function pairOf<M>(first: Estimator<M>, networks: readonly Network[], forecasters: readonly Network[]): Estimator<PairState<M>> {
  return {
    version: 1000 * first.version + 5,
    start: (config) => ({
      ensemble: first.start(config),
      judge: startJudge(config.charge),
      worth: config.worth,
      common: null,
      downMinutes: 0,
      stop: false,
    }),
    step(state, readings, evidence) {
      state.ensemble = first.step(state.ensemble, readings, evidence)
      stepJudge(state.judge, readings, evidence, networks, state.worth)
      if (state.judge.steps === 0) weigh(state, first.advice(state.ensemble).collectWorthPerH)
      return state
    },
    estimate: (state) => first.estimate(state.ensemble),
    advice(state) {
      const advice = first.advice(state.ensemble)
      const { shares } = state.judge
      if (shares === null || state.common === null) return advice
      const because = advice.because['stop-collecting'] ?? []
      const reasons = [...because, { code: 'learned-tar', value: shares[2] }]
      return { ...advice, stopCollecting: state.stop, because: { ...advice.because, 'stop-collecting': reasons } }
    },
    forecast(state) {
      const own = first.forecast(state.ensemble)
      const { memory } = state.judge
      if (memory.litMinute === null || memory.smoothWall.length === 0) return own
      return { ...own, calls: together(own, horizonOf(forecasters, signsOf(memory))) }
    },
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

/** Once a minute: the common worth, and whether it has been low for long enough. A stop stands until the worth is clearly back. */
function weigh<M>(state: PairState<M>, ensembleWorthKgH: number | null): void {
  const judged = state.judge.worth
  if (judged === null || ensembleWorthKgH === null) return
  state.common = ensembleShare * Math.tanh(ensembleWorthKgH / squeezeKgH) + (1 - ensembleShare) * judged
  state.downMinutes = state.common < stopBelow ? state.downMinutes + 1 : 0
  state.stop = state.downMinutes >= stopMinutes || (state.stop && state.common < 0)
}

const heard = { 'start-collecting': 'start', 'stop-collecting': 'stop', seal: 'seal' } as const

/** The mean of both ranges, where the ensemble has one yet, narrowed about its middle. */
function together({ calls, view }: EstimatorForecast, horizon: Horizon): EstimatorForecast['calls'] {
  const both: EstimatorForecast['calls'] = {}
  for (const [call, name] of Object.entries(heard) as [keyof typeof heard, keyof Horizon][]) {
    const learned = rangeAt(view.at, horizon[name])
    const own = calls[call] ?? learned
    const mean = (edge: keyof TimeRange): number => ensembleForecastShare * own[edge] + (1 - ensembleForecastShare) * learned[edge]
    const likely = Math.max(view.at, mean('likely'))
    const from = (edge: keyof TimeRange): number => Math.max(view.at, likely + narrowed * (mean(edge) - likely))
    both[call] = { earliest: from('earliest'), likely, latest: from('latest') }
  }
  return both
}

const rangeAt = (at: number, [low, middle, high]: Hours): TimeRange => ({
  earliest: at + low * hourMs,
  likely: at + middle * hourMs,
  latest: at + high * hourMs,
})

/** The estimator that the service runs. */
export const pair: Estimator<PairState<EnsembleState>> = pairOf(ensemble, judges, horizons)
