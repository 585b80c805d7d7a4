import type { Ms, Reason } from '../../contract/fold.ts'
import type { Lesson } from '../../contract/learnt.ts'
import type { HintView } from '../../contract/live.ts'
import { roles, type Role } from '../../contract/vocabulary.ts'
import { fireIsWanted, stepFire } from '../alarms/fire.ts'
import { forecastCalls } from '../calls/forecast.ts'
import { hintsOf, sealedHints } from '../calls/hints.ts'
import { doneOf, propose } from '../calls/propose.ts'
import { stepCalls } from '../calls/state.ts'
import { startWindow, stepWindow } from '../calls/window.ts'
import { stepCondenser } from '../condenser/watch.ts'
import { airC } from '../cooling/fit.ts'
import { nightLesson, stoodOpen } from '../cooling/lesson.ts'
import { stepNight } from '../cooling/night.ts'
import { lostGround, mustWithdraw } from '../cooling/open.ts'
import type { Estimator } from '../estimate/types.ts'
import { stepPhase } from '../phases/phase.ts'
import { firingId } from './acts.ts'
import { alarmGrid, sceneAt } from './alarm.ts'
import type { Emit } from './emit.ts'
import { mean, write } from './history.ts'
import type { Look } from './look.ts'
import { stepModel } from './model.ts'
import { freshFiring, litAtOf, lookAt, type KilnState } from './state.ts'

export const gridMs = 10_000
const minuteMs = 60_000
const forecastEveryMs = 300_000
/** A hint is said again when its time moved by so much, and not before so long. */
const hintMovedMs = 4 * minuteMs
const hintRestMs = 5 * minuteMs

/** One step of 10 s: readings, model, minute rules, phase, calls, alarms, forecast. */
export function stepGrid<M>(state: KilnState<M>, estimator: Estimator<M> | null, at: Ms, emit: Emit): void {
  state.now = gather(state)
  const newMinute = at % minuteMs === 0
  if (newMinute) for (const role of roles) write(state.past[role], at - 1, state.now[role] ?? null)
  if (estimator !== null) stepModel(state, estimator, at)
  const look = lookAt(state, at)
  if (newMinute) stepMinute(state, look)
  stepPhases(state, look, emit)
  const changed = stepCallStates(state, look, emit)
  alarmGrid(state, at, emit)
  if (newMinute && state.estimate !== null) emit.say(at, { kind: 'estimate', estimate: state.estimate })
  const lit = litAtOf(state) !== null && state.phase.phase !== 'idle'
  if (lit && (changed || state.forecastAt === null || at - state.forecastAt >= forecastEveryMs)) stepForecast(state, estimator, look, emit)
  if (newMinute) stepHints(state, look, emit)
  if (newMinute && look.facts.sealedAt !== null) teach(state, estimator, at, emit)
}

function stepMinute(state: KilnState, look: Look): void {
  if (look.litAt === null) coldStart(state, look)
  stepFire(state.fire, look)
  stepCondenser(state.condenser, look)
  stepNight(state, look, state.cold, state.advice)
  if (look.facts.sealedAt !== null) return
  if (state.phase.phase === 'failed') state.window = startWindow()
  else if (look.litAt !== null) stepWindow(state.window, look, state.advice)
}

/** Before lighting all probes stand in the same air: how far the wall's reading is off is learnt here. */
function coldStart(state: KilnState, look: Look): void {
  const wall = mean(look.past.wall, 10)
  const air = airC(look)
  if (wall !== null && air !== null && wall < 60) state.cold.wallOverAirK = wall - air.value
}

function stepPhases(state: KilnState, look: Look, emit: Emit): void {
  if (!stepPhase(state.phase, look, state.window, coldBecause(state, look))) return
  const { phase, because } = state.phase
  const open = state.ribbon.at(-1)
  if (open !== undefined) open.to = look.at
  state.ribbon.push({ phase, from: look.at, to: null })
  if (phase === 'kindling' && look.facts.litAt === null) {
    const litAt = litAtOf(state) ?? look.at
    state.firing ??= firingId(state, litAt)
    state.evidence.push({ at: litAt, kind: 'lit' })
  }
  emit.say(look.at, { kind: 'phase', phase, because })
  if (phase === 'idle' && look.facts.unloadedAt === null) forgetFiring(state, look.at)
}

/** What was taken for a lighting was none: the kiln waits for one as before. */
function forgetFiring(state: KilnState, at: Ms): void {
  Object.assign(state, freshFiring(at))
  state.firing = null
  state.model = null
}

/** Cold is what the opening call found; a gap opened before it was due makes nothing cold. */
function coldBecause(state: KilnState, look: Look): Reason[] | null {
  const { open } = state.calls
  if (open.state === 'due') return open.because
  const stays =
    state.phase.phase === 'cold' && open.state === 'done' && state.cooling !== null && mustWithdraw(state.cooling, look) === null
  return stays ? state.phase.because : null
}

function stepCallStates(state: KilnState, look: Look, emit: Emit): boolean {
  const ground = {
    look,
    phase: state.phase.phase,
    window: state.window,
    calls: state.calls,
    advice: state.advice,
    open: state.open,
    openWithdraw: state.cooling === null ? null : (mustWithdraw(state.cooling, look) ?? lostGround(state.cooling, look)),
  }
  const changes = stepCalls(state.calls, propose(ground), doneOf(look), look.at)
  for (const { call, state: turned, because } of changes) {
    emit.say(look.at, { kind: 'call', call, state: turned, because })
    if (call === 'stop-collecting' && turned !== 'done') state.stopTaught = turned === 'due' ? stopTaught(look, because) : []
  }
  return changes.length > 0
}

/** What a call to stop teaches. Where the wall stood counts when a smoke probe told it: what was seen came late as often as not. */
function stopTaught({ at, litAt, past }: Look, because: readonly Reason[]): Lesson[] {
  const wallC = mean(past.wall, 5)
  const seen = because.some(({ code }) => code.startsWith('seen-'))
  const told: Lesson[] = []
  if (litAt !== null && at - litAt > minuteMs) told.push({ part: 'hours', toStop: Math.round((at - litAt) / 36_000) / 100 })
  if (!seen && wallC !== null && mean(past.smoke, 10) !== null) told.push({ part: 'stop', wallC: Math.round(wallC) })
  return told
}

/** Each part of what the firing taught is told once. */
function teach<M>(state: KilnState<M>, estimator: Estimator<M> | null, at: Ms, emit: Emit): void {
  const lessons = [
    estimator === null || state.model === null ? null : estimator.lesson(state.model),
    ...state.stopTaught,
    nightLesson(state, stoodOpen(state, at)),
  ]
  for (const lesson of lessons) {
    if (lesson === null || state.taught.includes(lesson.part)) continue
    state.taught.push(lesson.part)
    emit.say(at, { kind: 'lesson', lesson })
  }
}

function stepForecast<M>(state: KilnState<M>, estimator: Estimator<M> | null, look: Look, emit: Emit): void {
  state.forecastAt = look.at
  const rules = forecastCalls(look, state.window, state.calls)
  const known = estimator !== null && state.model !== null && state.estimate !== null ? estimator.forecast(state.model) : null
  state.forecast = known?.view ?? null
  for (const call of ['stop-feeding', 'start-collecting', 'stop-collecting', 'seal'] as const) {
    const standing = state.calls[call]
    const range = rules[call] === undefined ? null : (known?.calls[call] ?? rules[call])
    standing.forecast = range
    if (range !== null)
      emit.say(look.at, {
        kind: 'forecast',
        call,
        earliest: Math.round(range.earliest),
        likely: Math.round(range.likely),
        latest: Math.round(range.latest),
      })
  }
}

function stepHints(state: KilnState, look: Look, emit: Emit): void {
  state.hints = hintsNow(state, look)
  for (const { hint, by, because } of state.hints) {
    const last = state.said[hint]
    if (last !== undefined && (look.at - last.at < hintRestMs || Math.abs(by - last.by) < hintMovedMs)) continue
    state.said[hint] = { at: look.at, by }
    emit.say(look.at, { kind: 'hint', hint, by, because })
  }
}

function hintsNow(state: KilnState, look: Look): HintView[] {
  if (look.litAt === null || state.phase.phase === 'idle') return []
  if (look.facts.sealedAt !== null) return sealedHints(look, look.facts.sealedAt, state.cooling, state.calls.open.state)
  return hintsOf({
    look,
    phase: state.phase.phase,
    calls: state.calls,
    fire: state.fire,
    fireWanted: fireIsWanted(sceneAt(state, look.at)),
    condenser: state.condenser,
  })
}

/** Means of the good samples of the last 10 s; a slower channel keeps its last good value while it is heard. */
function gather(state: KilnState): Partial<Record<Role, number>> {
  const now: Partial<Record<Role, number>> = {}
  const at = state.nextGridAt
  for (const id in state.channels) {
    const channel = state.channels[id]
    if (channel === undefined) continue
    const { role, track } = channel
    if (role !== null && now[role] === undefined) {
      const fresh = track.heardMs !== null && at - track.heardMs <= Math.max(15, 3 * track.periodS) * 1000
      if (channel.count > 0) now[role] = channel.sum / channel.count
      else if (track.value !== null && track.quality === 'good' && fresh && !track.nodeLost) now[role] = track.value
    }
    channel.sum = 0
    channel.count = 0
  }
  return now
}
