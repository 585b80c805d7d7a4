import type { Ms } from '../../contract/fold.ts'
import type { CallView, ChannelView, FiringView, HandsView, KilnView } from '../../contract/live.ts'
import { usualBottleL } from '../../contract/kiln-defaults.ts'
import { calls, type Role } from '../../contract/vocabulary.ts'
import { boardView } from '../alarms/board.ts'
import { readTrack } from '../channels/track.ts'
import { commandView } from './command.ts'
import { guessEstimate } from './guess.ts'
import { trendOver } from './history.ts'
import { levelOf } from './run.ts'
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
    // hints are made each minute; what was due before the seal is past with it at once
    hints: state.facts.sealedAt === null ? state.hints : state.hints.filter(({ hint }) => hint === 'check-seal' || hint === 'open-untold'),
    hands: handsView(state, at),
  }
}

function firingView(state: KilnState): FiringView {
  const { config, facts, phase } = state
  const litAt = litAtOf(state)
  return {
    kiln: config.kiln,
    kilnName: config.name,
    way: config.way,
    firing: facts.unloadedAt === null ? state.firing : null,
    litAt,
    litInferred: facts.litAt === null && phase.litInferredAt !== null,
    armedAt: facts.armedAt,
    collectingSince: facts.stoppedAt === null ? facts.startedAt : null,
    sealedAt: facts.sealedAt,
    // the phases follow at the next reading; what was logged as lit is no longer a drum to be loaded
    phase: phase.phase === 'idle' && litAt !== null && facts.unloadedAt === null ? 'kindling' : phase.phase,
    phaseSince: phase.since,
    because: phase.because,
    ribbon: state.ribbon.map((span) => ({ ...span })),
    acts: [...state.acts],
    lastWettedAt: facts.wettings.at(-1) ?? null,
    lastFedAt: facts.feeds.at(-1) ?? null,
    bottle: {
      number: facts.bottleNumber,
      litres: facts.bottleLitres,
      sizeL: config.bottleL ?? usualBottleL,
      level: levelOf(state.run, state.acts),
    },
    charge: { ...config.charge, ...facts.charge },
    band: { startC: config.limits.smokeStartC, stopC: config.limits.smokeStopC },
    sign: config.sign ?? null,
  }
}

/** A fed fire, and cloths that dry, swing within a quarter of an hour: what is told is the run over about twice that, min. */
const trendMin = 30

function channelViews(state: KilnState, at: Ms): ChannelView[] {
  const views: ChannelView[] = []
  const seen = new Set<Role>()
  for (const [id, { role, track }] of Object.entries(state.channels)) {
    if (role === null) continue
    const { value, quality, t, heard, slopePerH, slopeSd, error } = readTrack(track, at)
    // the minutes behind are those of the first channel of a role
    const long = slopePerH === null || seen.has(role) ? null : trendOver(state.past[role], trendMin)
    if (value !== null) seen.add(role)
    const trend = long ?? { slopePerH, slopeSd }
    views.push({ channel: id, role, value, quality, t, heard, periodS: track.periodS, ...trend, error })
  }
  return views
}

/**
 * The next thing that needs hands: a standing call, else the nearest hint, else the nearest turn. Never that one may leave, and once sealed
 * nothing until the trial opening is due: no hour is named for it.
 */
function handsView(state: KilnState, at: Ms): HandsView | null {
  if (litAtOf(state) === null || state.facts.unloadedAt !== null) return null
  const sealed = state.facts.sealedAt !== null
  for (const call of calls) {
    const { state: stands, since } = state.calls[call]
    // what was due before the seal is past with it
    const past = sealed ? call !== 'open' : call === 'start-collecting' && state.calls['stop-collecting'].state !== 'not-yet'
    if (stands === 'due' && !past) return { next: call, at: since }
  }
  if (sealed) return null
  const turns: HandsView[] = state.hints.map(({ hint, by }) => ({ next: hint, at: Math.max(at, by) }))
  for (const call of calls) {
    const { forecast, state: stands } = state.calls[call]
    if (forecast !== null && call !== 'open' && (stands === 'not-yet' || stands === 'withdrawn'))
      turns.push({ next: call, at: Math.max(at, forecast.earliest) })
  }
  turns.sort((a, b) => a.at - b.at)
  return turns[0] ?? null
}
