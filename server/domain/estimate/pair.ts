import { freeze, thaw } from './pack.ts'
import { type JudgeState, startJudge, stepJudge } from './learned/judge.ts'
import type { Network } from './learned/network.ts'
import type { KilnConfig } from '../../contract/fold.ts'
import type { Estimator } from './types.ts'

/** The physical ensemble and the learned judge, side by side. */
export interface PairState<M> {
  ensemble: M
  judge: JudgeState
  worth: KilnConfig['worth']
}

/** Runs both on the same readings; the ensemble estimates and forecasts, the judge adds its opinion to the advice. */
export function pairOf<M>(ensemble: Estimator<M>, networks: readonly Network[]): Estimator<PairState<M>> {
  return {
    version: 1000 * ensemble.version + 1,
    start: (config) => ({ ensemble: ensemble.start(config), judge: startJudge(config.charge), worth: config.worth }),
    step(state, readings, evidence) {
      state.ensemble = ensemble.step(state.ensemble, readings, evidence)
      stepJudge(state.judge, readings, evidence, networks, state.worth)
      return state
    },
    estimate: (state) => ensemble.estimate(state.ensemble),
    advice(state) {
      const { worth, start, stop, shares } = state.judge
      return { ...ensemble.advice(state.ensemble), judge: worth === null || shares === null ? null : { worth, start, stop, shares } }
    },
    forecast: (state) => ensemble.forecast(state.ensemble),
    freeze(state) {
      const inner = ensemble.freeze(state.ensemble)
      const own = freeze({ judge: state.judge, worth: state.worth })
      const bytes = new Uint8Array(4 + own.length + inner.length)
      new DataView(bytes.buffer).setUint32(0, own.length)
      bytes.set(own, 4)
      bytes.set(inner, 4 + own.length)
      return bytes
    },
    thaw(bytes) {
      const length = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0)
      const own = thaw(bytes.subarray(4, 4 + length)) as { judge: JudgeState; worth: KilnConfig['worth'] }
      return { ...own, ensemble: ensemble.thaw(bytes.subarray(4 + length)) }
    },
  }
}
