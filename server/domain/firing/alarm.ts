import type { Input, Ms } from '../../contract/fold.ts'
import type { HealthCode } from '../../contract/vocabulary.ts'
import { ebb, order, tell, tickBoard, type Telling } from '../alarms/board.ts'
import type { AlarmItem } from '../alarms/engine.ts'
import { judgeFire } from '../alarms/fire.ts'
import { when } from '../alarms/limit.ts'
import { judgeOutlet } from '../alarms/condenser.ts'
import { judgeCo, judgeEvery10s, judgeEveryMinute } from '../alarms/rules.ts'
import { usualFlowLPerH, type Share } from '../condenser/loss.ts'
import type { Scene, Tell } from '../alarms/scene.ts'
import type { Channel } from './channel.ts'
import type { Emit } from './emit.ts'
import { isTended, lookAt, type KilnState } from './state.ts'

export function sceneAt(state: KilnState, at: Ms): Scene {
  return {
    look: lookAt(state, at),
    phase: state.phase.phase,
    phaseSince: state.phase.since,
    calls: state.calls,
    cooling: state.cooling,
    modelLeak: state.advice?.airLeak ?? false,
    condenser: state.condenser,
    flowLPerH: flowOf(state),
    fire: state.fire,
    board: state.board,
    channels: state.channels,
    lostNodes: state.lostNodes,
    tended: isTended(state),
  }
}

/** From the model where it runs, give or take two fifths; else what a drum usually gives. */
function flowOf(state: KilnState): Share {
  const { estimate } = state
  return estimate === null ? usualFlowLPerH : { low: 0.6 * estimate.condensateKgH, high: 1.4 * estimate.condensateKgH }
}

function sayItem(emit: Emit, at: Ms, item: AlarmItem): void {
  const { alarm, channel, state, priority, because } = item
  emit.say(at, { kind: 'alarm', alarm, ...(channel === null ? {} : { channel }), state, priority, because })
}

function teller(state: KilnState, at: Ms, emit: Emit): Tell {
  return (telling) => {
    const { phase } = state.phase
    emit.design.listener?.(at, phase, telling)
    const item = tell(state.board, emit.design.table, at, phase, telling)
    if (item !== null) sayItem(emit, at, item)
  }
}

/** The alarms that hang on a single sample. A faulty one changes nothing but the alarm of its probe. */
export function alarmSample(state: KilnState, id: string, channel: Channel, value: number | null, at: Ms, emit: Emit): void {
  if (channel.role === null) return
  const speak = teller(state, at, emit)
  const faulty = channel.faultSince !== null
  speak({
    alarm: 'probe-fault',
    channel: id,
    sign: when(faulty),
    because: [], // the channel itself carries the word of its fault
    quiet: !isTended(state),
  })
  if (value === null || follows(state, id, channel)) return
  switch (channel.role) {
    case 'outlet':
      return judgeOutlet(sceneAt(state, at), value, speak)
    case 'firebox':
      return judgeFire(sceneAt(state, at), value, speak)
    case 'co':
      return judgeCo(sceneAt(state, at), value, speak)
    default:
      return
  }
}

/** True where another channel of the same role comes first: two probes of one kind would quarrel over one alarm. */
function follows(state: KilnState, id: string, channel: Channel): boolean {
  for (const other in state.channels) {
    if (other === id) return false
    if (state.channels[other]?.role === channel.role && state.channels[other].track.value !== null) return true
  }
  return false
}

export function alarmGrid(state: KilnState, at: Ms, emit: Emit): void {
  const speak = teller(state, at, emit)
  const scene = sceneAt(state, at)
  judgeEvery10s(scene, speak)
  // told again because arming may come after it
  if (state.health['nobody-watching'] !== undefined) speak(nobody(state, true))
  if (at % 60_000 === 0) judgeEveryMinute(scene, speak)
  ebb(state.board, at)
}

export function alarmTick(state: KilnState, at: Ms, emit: Emit): void {
  for (const item of tickBoard(state.board, emit.design.table, at)) sayItem(emit, at, item)
}

const nobody = (state: KilnState, on: boolean): Telling => ({
  alarm: 'nobody-watching',
  channel: null,
  sign: when(on),
  because: [],
  quiet: state.facts.armedAt === null,
})

/** Troubles of the service have their alarms here, so that alarms have one home. */
export function alarmHealth(state: KilnState, code: HealthCode, on: boolean, at: Ms, emit: Emit): void {
  if (on) state.health[code] ??= at
  else delete state.health[code]
  teller(state, at, emit)(code === 'nobody-watching' ? nobody(state, on) : { alarm: code, channel: null, sign: when(on), because: [] })
}

export function alarmAct(state: KilnState, input: Extract<Input, { kind: 'act' }>, emit: Emit): void {
  const { act, at } = input
  if (act.action !== 'acknowledge' && act.action !== 'shelve' && act.action !== 'unshelve') return
  const minutes = act.action === 'shelve' ? act.minutes : 0
  for (const item of order(state.board, emit.design.table, at, act.action, act.alarm, act.channel ?? null, minutes)) sayItem(emit, at, item)
}
