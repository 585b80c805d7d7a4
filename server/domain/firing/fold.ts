import type { Input, KilnConfig } from '../../contract/fold.ts'
import type { Estimator } from '../estimate/types.ts'
import { decodeUtf8, encodeUtf8 } from '../text/utf8.ts'
import { takeAct } from './acts.ts'
import { calibrate, hear, newChannel, roleOf, type Channel } from './channel.ts'
import { emitter } from './emit.ts'
import { gridMs, stepGrid } from './grid.ts'
import { startState, type KilnState } from './state.ts'
import type { KilnFold } from './types.ts'
import { viewOf } from './view.ts'

/**
 * The fold of one kiln. Outputs are numbered by the last journalled input (`cause`) and count on (`n`) through the ticks after it.
 * @param estimator the physical model kept in step, or null: then the rules alone judge.
 */
export function makeKilnFold<M>(estimator: Estimator<M> | null): KilnFold<KilnState<M>> {
  return {
    version: 1 + 1000 * (estimator?.version ?? 0),
    start: (config: KilnConfig) => startState<M>(config),
    step(state, input) {
      if (input.kind !== 'tick' && input.seq !== state.cause) {
        state.cause = input.seq
        state.n = 0
      }
      const emit = emitter(state)
      if (state.nextGridAt === 0) state.nextGridAt = Math.ceil(input.at / gridMs) * gridMs
      for (; state.nextGridAt <= input.at; state.nextGridAt += gridMs) stepGrid(state, state.nextGridAt, emit)
      take(state, input)
      state.at = input.at
      return { state, outputs: emit.outputs }
    },
    view: viewOf,
    freeze: (state) => encodeUtf8(JSON.stringify(state)),
    thaw: (bytes) => JSON.parse(decodeUtf8(bytes) ?? '') as KilnState<M>,
  }
}

function channelOf(state: KilnState, id: string): Channel {
  return (state.channels[id] ??= newChannel(roleOf(state.config, id)))
}

function take(state: KilnState, input: Input): void {
  switch (input.kind) {
    case 'sample':
      if (input.late) return
      hear(
        channelOf(state, input.channel),
        input.at,
        input.t,
        input.value === null ? null : calibrate(state.config.calibration[input.channel], input.value),
        input.quality,
      )
      return
    case 'channel': {
      const channel = channelOf(state, input.channel)
      channel.periodS = input.periodS
      channel.lsb = input.lsb
      return
    }
    case 'node':
      if (input.is === 'up') delete state.lostNodes[input.node]
      else state.lostNodes[input.node] ??= input.at
      return
    case 'act':
      takeAct(state, input)
      return
    case 'config':
      state.config = input.config
      for (const id of Object.keys(state.channels)) channelOf(state, id).role = roleOf(input.config, id)
      return
    case 'health':
    case 'tick':
      return
  }
}

export const kilnFold: KilnFold<KilnState> = makeKilnFold<unknown>(null)
