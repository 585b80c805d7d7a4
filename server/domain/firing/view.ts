import type { Ms } from '../../contract/fold.ts'
import type { CallView, ChannelView, FiringView, HandsView, KilnView } from '../../contract/live.ts'
import { calls } from '../../contract/vocabulary.ts'
import { boardView } from '../alarms/board.ts'
import { readTrack } from '../channels/track.ts'
import { commandView } from './command.ts'
import { guessEstimate } from './guess.ts'
import { litAtOf, type KilnState } from './state.ts'

/** All that a page shows of the kiln at `at`. Changes nothing. */
export function viewOf(state: KilnState, at: Ms): KilnView {
  return {
    firing: firingView(state),
    channels: channelViews(state, at),
    command: commandView(state),
    calls: calls.map((call): CallView => ({ call, ...state.calls[call] })),
    alarms: boardView(state.board),
    estimate: state.estimate ?? guessEstimate(state),
    forecast: state.forecast,
    hints: state.hints,
    hands: handsView(state, at),
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
    ribbon: state.ribbon.map((span) => ({ ...span })),
    acts: [...state.acts],
    lastWettedAt: facts.wettings.at(-1) ?? null,
    lastFedAt: facts.feeds.at(-1) ?? null,
    bottle: { number: facts.bottleNumber, litres: facts.bottleLitres },
    charge: { ...config.charge, ...facts.charge },
    band: { startC: config.limits.smokeStartC, stopC: config.limits.smokeStopC },
    sign: config.sign ?? null,
  }
}

function channelViews(state: KilnState, at: Ms): ChannelView[] {
  const views: ChannelView[] = []
  for (const [id, channel] of Object.entries(state.channels)) {
    if (channel.role === null) continue
    const { value, quality, t, heard, slopePerH, slopeSd, error } = readTrack(channel.track, at)
    views.push({ channel: id, role: channel.role, value, quality, t, heard, periodS: channel.track.periodS, slopePerH, slopeSd, error })
  }
  return views
}

/** The next thing that needs hands: a standing call, else the nearest hint, else the nearest turn. Never that one may leave. */
function handsView(state: KilnState, at: Ms): HandsView | null {
  if (litAtOf(state) === null || state.facts.unloadedAt !== null) return null
  for (const call of calls) {
    const { state: stands, since } = state.calls[call]
    const past = call === 'start-collecting' && state.calls['stop-collecting'].state !== 'not-yet'
    if (stands === 'due' && !past) return { next: call, at: since }
  }
  if (state.facts.sealedAt !== null) return state.openNotBefore === null ? null : { next: 'open', at: Math.max(at, state.openNotBefore) }
  const turns: HandsView[] = state.hints.map(({ hint, by }) => ({ next: hint, at: by }))
  for (const call of calls) {
    const { forecast } = state.calls[call]
    if (forecast !== null) turns.push({ next: call, at: forecast.earliest })
  }
  turns.sort((a, b) => a.at - b.at)
  return turns[0] ?? null
}
