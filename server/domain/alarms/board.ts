import type { ChannelId, Ms, Reason } from '../../contract/fold.ts'
import type { AlarmView } from '../../contract/live.ts'
import type { AlarmCode, Phase, Priority } from '../../contract/vocabulary.ts'
import type { AlarmTable } from './definition.ts'
import { advance, command, judge, newItem, nextAt, type AlarmItem, type Delays } from './engine.ts'
import type { Sign } from './limit.ts'

/** All alarms of one kiln. Items are made when they are first judged; the key is the code, with the channel where it is about one. */
export interface AlarmBoard {
  items: Record<string, AlarmItem>
  /** When an item may next change by itself; plain numbers only, so -1 stands for never. */
  nextAt: Ms
  /** When the last alarms were raised, for the flood guard. */
  raisedAt: Ms[]
  flood: boolean
}

export function emptyBoard(): AlarmBoard {
  return { items: {}, nextAt: -1, raisedAt: [], flood: false }
}

const rank: Record<Priority, number> = { urgent: 0, warning: 1, notice: 2 }

const floodMs = 600_000 // instrument facts 6.4: 10 or more in 10 minutes, over when fewer than 5
const floodStarts = 10
const floodEnds = 5

export const keyOf = (alarm: AlarmCode, channel: ChannelId | null): string => (channel === null ? alarm : `${alarm} ${channel}`)

/** How one condition stands; the reasons are kept while it is abnormal. */
export interface Telling {
  alarm: AlarmCode
  /** The channel or node that it is about; null for the kiln. */
  channel: ChannelId | null
  sign: Sign
  because: Reason[]
  /** Silent for a reason beside the phase. */
  quiet?: boolean
  /** Told anew: it was answered in vain, or nobody answered. */
  again?: boolean
  priority?: Priority
  /** The kiln's own delays. */
  delays?: Delays
}

/** Takes in how one condition stands at `at`. Returns the item when its state changed and is worth a word. */
export function tell(board: AlarmBoard, table: AlarmTable, at: Ms, phase: Phase, telling: Telling): AlarmItem | null {
  const { alarm, channel, sign, because } = telling
  const definition = table[alarm]
  const priority = telling.priority ?? definition.priority
  const key = keyOf(alarm, channel)
  let item = board.items[key]
  if (item === undefined) {
    if (sign !== 'abnormal') return null
    item = newItem(alarm, channel, priority, at)
    board.items[key] = item
  }
  if (!item.on) item.delays = telling.delays ?? null
  const before = item.abnormalSince === null && item.clearSince !== null && sign === 'normal' && item.state === 'normal' && !item.on
  if (before) return null
  judge(item, sign, at)
  let grew = false
  if (sign === 'abnormal') {
    item.because = because
    if (!item.on) item.priority = priority
    else if (rank[priority] < rank[item.priority]) grew = escalate(board, table, item, priority, at)
  }
  const quiet = telling.quiet === true || definition.quietIn.includes(phase) || (board.flood && priority === 'notice')
  const spoke = hush(board, table, item, quiet, sign, at)
  const changed = step(board, table, item, at)
  const anew = telling.again === true && sign !== 'normal' && tellAnew(board, table, item, at)
  settle(board, table)
  return spoke || changed || grew || anew ? item : null
}

/** What has become more urgent is told anew, even where it was acknowledged; it never becomes less urgent while it lasts. */
function escalate(board: AlarmBoard, table: AlarmTable, item: AlarmItem, priority: Priority, at: Ms): boolean {
  item.priority = priority
  if (item.state === 'shelved' || item.state === 'suppressed' || item.state === 'out-of-service') return false
  item.state = 'unacknowledged'
  item.since = at
  raised(board, table, item, at)
  return true
}

/** Once in a spell while nobody took note of it, and each time after somebody did. */
function tellAnew(board: AlarmBoard, table: AlarmTable, item: AlarmItem, at: Ms): boolean {
  const taken = command(item, table[item.alarm], 'realarm', at)
  if (!taken && (item.state !== 'unacknowledged' || item.reminded)) return false
  item.reminded ||= !taken
  raised(board, table, item, at)
  return true
}

/** Suppresses by design, or lets out again: then the state is taken anew from the present condition. */
function hush(board: AlarmBoard, table: AlarmTable, item: AlarmItem, quiet: boolean, sign: Sign, at: Ms): boolean {
  const definition = table[item.alarm]
  if (quiet && item.state !== 'suppressed') {
    const sounded = item.state !== 'normal'
    return command(item, definition, 'suppress', at) && sounded
  }
  if (quiet || item.state !== 'suppressed') return false
  // what ended while hidden needs no delay to end
  if (sign === 'normal' || sign === 'between') item.on = false
  command(item, definition, 'release', at)
  if (item.on) raised(board, table, item, at)
  return item.on
}

function step(board: AlarmBoard, table: AlarmTable, item: AlarmItem, at: Ms): boolean {
  const before = item.state
  if (!advance(item, table[item.alarm], at)) return false
  if (item.state === 'unacknowledged' && before !== 'unacknowledged') raised(board, table, item, at)
  return true
}

/** Lets all clocks run to `at`; cheap while nothing is due. */
export function tickBoard(board: AlarmBoard, table: AlarmTable, at: Ms): AlarmItem[] {
  if (board.nextAt < 0 || at < board.nextAt) return []
  const changed: AlarmItem[] = []
  for (const key in board.items) {
    const item = board.items[key]
    if (item !== undefined && step(board, table, item, at)) changed.push(item)
  }
  settle(board, table)
  return changed
}

/** What a person does: to one alarm of a channel, or to every alarm of that code where no channel is named. */
export function order(
  board: AlarmBoard,
  table: AlarmTable,
  at: Ms,
  what: 'acknowledge' | 'shelve' | 'unshelve',
  alarm: AlarmCode,
  channel: ChannelId | null,
  minutes = 0,
): AlarmItem[] {
  const changed: AlarmItem[] = []
  for (const key in board.items) {
    const item = board.items[key]
    if (item === undefined || item.alarm !== alarm || (channel !== null && item.channel !== channel)) continue
    const definition = table[alarm]
    if (!command(item, definition, what, at)) continue
    if (what === 'shelve') item.shelvedUntil = at + Math.min(Math.max(minutes, 1), definition.longestShelveMin) * 60_000
    changed.push(item)
  }
  settle(board, table)
  return changed
}

function raised(board: AlarmBoard, table: AlarmTable, item: AlarmItem, at: Ms): void {
  board.raisedAt = board.raisedAt.filter((t) => t > at - floodMs)
  board.raisedAt.push(at)
  if (board.raisedAt.length >= floodStarts) board.flood = true
  item.told = at
  const { group } = table[item.alarm]
  item.firstOut = !Object.values(board.items).some(
    (other) => other !== item && other.on && other.state !== 'suppressed' && table[other.alarm].group === group,
  )
}

/** Ends a flood when the rate has fallen. */
export function ebb(board: AlarmBoard, at: Ms): void {
  if (!board.flood) return
  board.raisedAt = board.raisedAt.filter((t) => t > at - floodMs)
  if (board.raisedAt.length < floodEnds) board.flood = false
}

function settle(board: AlarmBoard, table: AlarmTable): void {
  let next = Infinity
  for (const key in board.items) {
    const item = board.items[key]
    if (item !== undefined) next = Math.min(next, nextAt(item, table[item.alarm]))
  }
  board.nextAt = Number.isFinite(next) ? next : -1
}

/** What a page shows: everything that is not normal, and of the quiet ones those whose condition is on. Urgent first, then oldest. */
export function boardView(board: AlarmBoard): AlarmView[] {
  return Object.values(board.items)
    .filter((item) => item.state !== 'normal' && (item.state !== 'suppressed' || item.on))
    .sort((a, b) => rank[a.priority] - rank[b.priority] || a.since - b.since)
    .map((item) => ({
      alarm: item.alarm,
      ...(item.channel === null ? {} : { channel: item.channel }),
      state: item.state,
      priority: item.priority,
      since: item.since,
      firstOut: item.firstOut,
      because: item.because,
      shelvedUntil: item.shelvedUntil,
    }))
}
