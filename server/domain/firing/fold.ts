import type { Input, KilnConfig } from '../../contract/fold.ts'
import { describeTrack, trackNode } from '../channels/track.ts'
import { pair, type PairState } from '../estimate/pair.ts'
import type { EnsembleState } from '../estimate/shape.ts'
import type { Estimator } from '../estimate/types.ts'
import { takeAct } from './acts.ts'
import { alarmAct, alarmHealth, alarmSample, alarmTick } from './alarm.ts'
import { hear, newChannel, roleOf, type Channel } from './channel.ts'
import { alarmTable } from '../alarms/tables/definitions.ts'
import { emitter, type AlarmDesign, type Emit } from './emit.ts'
import { freezeState, thawState } from './freeze.ts'
import { gridMs, stepGrid } from './grid.ts'
import { startState, type KilnState } from './state.ts'
import type { KilnFold } from './types.ts'
import { viewOf } from './view.ts'

/**
 * The fold of one kiln. Outputs are numbered by the last journalled input (`cause`) and count on (`n`) through the ticks after it.
 * @param estimator the physical model kept in step, or null: then the rules alone judge.
 * @param design other delays than those of the table, for studies.
 */
export function makeKilnFold<M>(
  estimator: Estimator<M> | null,
  design: AlarmDesign = { table: alarmTable, listener: null },
): KilnFold<KilnState<M>> {
  return {
    version: 16 + 1000 * (estimator?.version ?? 0),
    start: (config: KilnConfig) => startState<M>(config),
    step(state, input) {
      if (input.kind !== 'tick' && input.seq !== state.cause) {
        state.cause = input.seq
        state.n = 0
      }
      const emit = emitter(state, design)
      if (state.nextGridAt === 0) state.nextGridAt = Math.ceil(input.at / gridMs) * gridMs
      for (; state.nextGridAt <= input.at; state.nextGridAt += gridMs) stepGrid(state, estimator, state.nextGridAt, emit)
      take(state, input, emit)
      alarmTick(state, input.at, emit)
      state.at = input.at
      return { state, outputs: emit.outputs }
    },
    view: viewOf,
    freeze: (state) => freezeState(state, estimator),
    thaw: (bytes) => thawState(bytes, estimator),
  }
}

function channelOf(state: KilnState, id: string): Channel {
  return (state.channels[id] ??= newChannel(state.config, id))
}

function take(state: KilnState, input: Input, emit: Emit): void {
  switch (input.kind) {
    case 'sample':
      return takeSample(state, input, emit)
    case 'channel':
      describeTrack(channelOf(state, input.channel).track, input.periodS, input.lsb, input.probe ?? null)
      return
    case 'node':
      if (input.is === 'up') delete state.lostNodes[input.node]
      else state.lostNodes[input.node] ??= input.at
      for (const channel of Object.values(state.channels)) if (channel.node === input.node) trackNode(channel.track, input.is)
      return
    case 'act':
      if (!takeAct(state, input)) return
      alarmAct(state, input, emit)
      if (input.act.action === 'reading') takeByHand(state, input, input.act, emit)
      return
    case 'config':
      if (JSON.stringify(input.config.prior) !== JSON.stringify(state.config.prior))
        state.evidence.push({ at: input.at, kind: 'known', prior: input.config.prior })
      state.config = input.config
      for (const [id, channel] of Object.entries(state.channels)) channel.role = roleOf(input.config, id)
      return
    case 'health':
      alarmHealth(state, input.code, input.on, input.at, emit)
      return
    case 'tick':
      return
  }
}

function takeSample(state: KilnState, input: Extract<Input, { kind: 'sample' }>, emit: Emit): void {
  // late data belongs to the history: it neither raises nor clears, and moves no phase
  if (input.late) return
  const channel = channelOf(state, input.channel)
  // a node that speaks is not lost
  delete state.lostNodes[channel.node]
  const value = hear(channel, input, state.config, input.channel)
  alarmSample(state, input.channel, channel, value, input.at, emit)
}

/** A number read from a hand thermometer counts as a reading; the next is due when somebody looks again. */
const byHandPeriodS = 900

function takeByHand(state: KilnState, input: Extract<Input, { kind: 'act' }>, act: { channel: string; value: number }, emit: Emit): void {
  const known = state.channels[act.channel] !== undefined
  const channel = channelOf(state, act.channel)
  if (!known) describeTrack(channel.track, byHandPeriodS, 1, null)
  const value = hear(
    channel,
    { t: input.doneAt, late: false, quality: 'good', value: act.value },
    { ...state.config, calibration: {} },
    act.channel,
  )
  alarmSample(state, act.channel, channel, value, input.at, emit)
}

/** The fold that the service runs: rules with the model beside them. */
export const kilnFold: KilnFold<KilnState<PairState<EnsembleState>>> = makeKilnFold(pair)
