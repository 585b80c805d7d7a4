import type { Ms } from '../../contract/fold.ts'
import type { CallView, ChannelView, Command, CommandView, FiringView, KilnView } from '../../contract/live.ts'
import { calls } from '../../contract/vocabulary.ts'
import { heardState } from './channel.ts'
import { slope } from './history.ts'
import { litAtOf, type KilnState } from './state.ts'

export function viewOf(state: KilnState, at: Ms): KilnView {
  return {
    firing: firingView(state),
    channels: channelViews(state, at),
    command: commandView(state),
    calls: calls.map((call): CallView => ({ call, ...state.calls[call] })),
    alarms: [],
    estimate: state.estimate,
    forecast: state.forecast,
    hints: state.hints,
    hands: null,
  }
}

function firingView(state: KilnState): FiringView {
  const { config, facts, phase } = state
  return {
    kiln: config.kiln,
    kilnName: config.name,
    way: config.way,
    firing: facts.unloadedAt === null ? state.firing : null,
    litAt: litAtOf(state),
    litInferred: facts.litAt === null && phase.litInferredAt !== null,
    armedAt: facts.armedAt,
    collectingSince: facts.stoppedAt === null ? facts.startedAt : null,
    sealedAt: facts.sealedAt,
    phase: phase.phase,
    phaseSince: phase.since,
    because: phase.because,
    ribbon: state.ribbon,
    acts: state.acts,
    lastWettedAt: facts.wettings.at(-1) ?? null,
    lastFedAt: facts.feeds.at(-1) ?? null,
    bottle: { number: facts.bottleNumber, litres: facts.bottleLitres },
    charge: { ...config.charge, ...facts.charge },
  }
}

function channelViews(state: KilnState, at: Ms): ChannelView[] {
  const views: ChannelView[] = []
  for (const [id, channel] of Object.entries(state.channels)) {
    if (channel.role === null) continue
    const heard = heardState(channel, at)
    views.push({
      channel: id,
      role: channel.role,
      value: heard === 'lost' || heard === 'never' ? null : channel.value,
      quality: channel.quality,
      t: channel.t,
      heard,
      periodS: channel.periodS,
      slopePerH: slope(state.past[channel.role], 15),
      slopeSd: null,
      error: 3,
    })
  }
  return views
}

function commandView(state: KilnState): CommandView {
  const command = commandOf(state)
  const call = command.call === null ? null : state.calls[command.call]
  return {
    do: command.do,
    since: call?.since ?? state.phase.since,
    next: null,
    notBefore: null,
    because: call?.because ?? state.phase.because,
    unless: [],
    sure: 'middle',
    doubts: [],
  }
}

function commandOf(state: KilnState): {
  do: Command
  call: 'stop-feeding' | 'start-collecting' | 'stop-collecting' | 'seal' | 'open' | null
} {
  const { facts, phase, calls } = state
  if (facts.unloadedAt !== null || facts.openedAt !== null) return { do: 'none', call: null }
  if (phase.phase === 'failed') return { do: 'relight', call: null }
  if (facts.sealedAt !== null) return calls.open.state === 'due' ? { do: 'trial-opening', call: 'open' } : { do: 'keep-shut', call: null }
  if (phase.phase === 'idle') return { do: facts.loadedAt === null ? 'none' : 'light', call: null }
  if (calls.seal.state === 'due') return { do: 'seal', call: 'seal' }
  if (calls['stop-collecting'].state === 'due') return { do: 'stop-collecting', call: 'stop-collecting' }
  if (calls['stop-feeding'].state === 'due') return { do: 'stop-feeding', call: 'stop-feeding' }
  if (calls['stop-collecting'].state === 'done') return { do: 'wait', call: null }
  if (calls['start-collecting'].state === 'done') return { do: 'collect', call: 'start-collecting' }
  if (calls['start-collecting'].state === 'due') return { do: 'start-collecting', call: 'start-collecting' }
  return { do: 'wait', call: null }
}
