import type { ChannelId, Ms, Reason } from '../../contract/fold.ts'
import type { AlarmCode, AlarmState, Priority } from '../../contract/vocabulary.ts'
import type { AlarmDefinition } from './definition.ts'
import type { Sign } from './limit.ts'
import { transition, type AlarmCommand } from './transition.ts'

/** One alarm of one channel (or of the kiln), with the clocks of its delays. Plain data. */
export interface AlarmItem {
  alarm: AlarmCode
  channel: ChannelId | null
  state: AlarmState
  since: Ms
  priority: Priority
  because: Reason[]
  firstOut: boolean
  /** When it was last raised. */
  told: Ms | null
  /** Was told once more while nobody took note of it. */
  reminded: boolean
  shelvedUntil: Ms | null
  /** The condition after its delays. */
  on: boolean
  abnormalSince: Ms | null
  clearSince: Ms | null
  /** The kiln's own delays, s, where it has some. */
  delays: Delays | null
}

export interface Delays {
  onS: number
  offS: number
}

export function newItem(alarm: AlarmCode, channel: ChannelId | null, priority: Priority, at: Ms): AlarmItem {
  return {
    alarm,
    channel,
    state: 'normal',
    since: at,
    priority,
    because: [],
    firstOut: false,
    told: null,
    reminded: false,
    shelvedUntil: null,
    on: false,
    abnormalSince: null,
    clearSince: null,
    delays: null,
  }
}

/** Takes in how the condition stands now. What cannot be judged changes nothing: a bad probe never quiets the alarm that it feeds. */
export function judge(item: AlarmItem, sign: Sign, at: Ms): void {
  if (sign === 'unknown') return
  if (sign === 'abnormal') item.abnormalSince ??= at
  else item.abnormalSince = null
  if (sign === 'normal') item.clearSince ??= at
  else item.clearSince = null
}

const onMs = (item: AlarmItem, definition: AlarmDefinition): Ms => (item.delays?.onS ?? definition.onDelayS) * 1000
const offMs = (item: AlarmItem, definition: AlarmDefinition): Ms => (item.delays?.offS ?? definition.offDelayS) * 1000

/** When the item may change by itself; Infinity when never. */
export function nextAt(item: AlarmItem, definition: AlarmDefinition): Ms {
  let next = Infinity
  if (!item.on && item.abnormalSince !== null) next = item.abnormalSince + onMs(item, definition)
  else if (item.on && item.clearSince !== null) next = item.clearSince + offMs(item, definition)
  if (item.shelvedUntil !== null) next = Math.min(next, item.shelvedUntil)
  if (item.state === 'acknowledged' && item.on && definition.realarmS !== null)
    next = Math.min(next, item.since + definition.realarmS * 1000)
  return next
}

/** Lets the clocks run to `at`. True when the state changed. */
export function advance(item: AlarmItem, definition: AlarmDefinition, at: Ms): boolean {
  let changed = false
  if (!item.on && item.abnormalSince !== null && at - item.abnormalSince >= onMs(item, definition)) {
    item.on = true
    item.reminded = false
    changed = command(item, definition, 'raise', at)
  } else if (item.on && item.clearSince !== null && at - item.clearSince >= offMs(item, definition)) {
    item.on = false
    changed = command(item, definition, 'clear', at)
  }
  if (item.shelvedUntil !== null && at >= item.shelvedUntil) changed = command(item, definition, 'unshelve', at) || changed
  if (item.state === 'acknowledged' && item.on && definition.realarmS !== null && at - item.since >= definition.realarmS * 1000)
    changed = command(item, definition, 'realarm', at) || changed
  return changed
}

/** Carries out one command; false where it is blocked. */
export function command(item: AlarmItem, definition: AlarmDefinition, what: AlarmCommand, at: Ms): boolean {
  const next = transition(item.state, what, { on: item.on, latching: definition.latching, returnsByItself: definition.returnsByItself })
  if (next === null) return false
  item.state = next
  item.since = at
  if (next !== 'shelved') item.shelvedUntil = null
  if (next === 'normal') item.firstOut = false
  return true
}
