import type { Ms, Quality } from '../../contract/fold.ts'
import { faultWords } from '../../contract/vocabulary.ts'
import type { RefusalReason } from '../../contract/vocabulary.ts'
import { convert } from '../channels/convert.ts'
import { plainKind } from '../channels/kind.ts'
import type { ChannelKind } from '../channels/kind.ts'
import type { SenmlRecord } from '../senml/resolve.ts'
import { toPrimary } from '../senml/units.ts'
import { channelName, isBoot } from './birth.ts'
import { boardTemperature, isBoardChannel } from './board.ts'
import { refuse } from './outcome.ts'
import type { Outcome } from './outcome.ts'
import { channelMemory, keepChannel, remark } from './state.ts'
import type { ChannelMemory, NodeMemory, Reading } from './state.ts'
import { packTimes, recordTime } from './times.ts'
import type { PackTimes } from './times.ts'

/** What a pack says of itself; null where it says nothing. */
export interface Identity {
  boot: number | null
  seq: number | null
  upS: number | null
}

export interface Accepted {
  identity: Identity
  times: PackTimes
  readings: Reading[]
  /** Channel to the announced longest time until its next reading, s. */
  updates: Map<string, number>
}

/** A record that is a measurement of this node. */
export interface Named {
  channel: string
  record: SenmlRecord
}

/** Takes the records of a pack that this service can use; refuses the others one by one. Null when the pack's identity is broken. */
export function acceptRecords(
  node: NodeMemory,
  pack: { records: readonly SenmlRecord[]; secondaryUnits: boolean },
  receivedMs: Ms,
  outcome: Outcome,
): Accepted | null {
  const identity: Identity = { boot: null, seq: null, upS: null }
  const named: Named[] = []
  for (const record of pack.records) {
    const channel = localName(node, record)
    if (channel === null) refuse(outcome, node, 'foreign-name', record.index)
    else if (!channelName.test(channel)) refuse(outcome, node, 'unknown-name', record.index)
    else if (channel === 'boot' || channel === 'seq' || channel === 'up') {
      if (!takeIdentity(identity, channel, record.value)) {
        refuse(outcome, node, 'bad-identity', null)
        return null
      }
    } else named.push({ channel, record })
  }
  const times = packTimes(named)
  const accepted: Accepted = { identity, times, readings: [], updates: new Map() }
  for (const one of named) takeRecord(one, { node, named, secondaryUnits: pack.secondaryUnits, receivedMs }, accepted, outcome)
  return accepted
}

interface Around {
  node: NodeMemory
  /** All measurements of the pack. */
  named: readonly Named[]
  secondaryUnits: boolean
  receivedMs: Ms
}

function takeRecord(one: Named, around: Around, accepted: Accepted, outcome: Outcome): void {
  const { node } = around
  const { index, timeS, updateS, value: number } = one.record
  const time = recordTime(timeS, accepted.times)
  if (time === null) return refuse(outcome, node, 'bad-time', index)
  const channel = channelMemory(node, one.channel)
  const meant = meaningOf(one, channel, around)
  if (typeof meant === 'string') return refuse(outcome, node, meant, index)
  if (!keepChannel(node, one.channel, channel)) return refuse(outcome, node, 'too-many-channels', index)
  // A number that is no reading is refused, and told as a fault: the channel is not silent.
  if (meant.refused) refuse(outcome, node, 'out-of-range', index)
  if (updateS !== null && updateS > 0) accepted.updates.set(one.channel, updateS)
  // A board's temperature rides on the readings that it belongs to.
  if (isBoardChannel(node, one.channel)) return
  const { relativeS, absoluteMs } = time
  const { quality, raw, value, coldJunctionC } = meant
  accepted.readings.push({
    record: index,
    channel: one.channel,
    relativeS,
    absoluteMs,
    quality,
    raw,
    value,
    coldJunctionC,
    sent: number ?? quality,
  })
}

/** The channel's name at its node; null for a name that belongs to another. */
function localName(node: NodeMemory, { name, based }: SenmlRecord): string | null {
  const own = `${node.node}/`
  if (name.startsWith(own)) return name.slice(own.length)
  const urn = node.birth?.urn ?? null
  if (urn !== null && name.startsWith(urn)) return name.slice(urn.length).replace(/^[:/_]/, '')
  return based ? null : name
}

const longestUpS = 20 * 366 * 86_400

function takeIdentity(identity: Identity, label: 'boot' | 'seq' | 'up', value: number | null): boolean {
  if (value === null) return false
  if (label === 'up') {
    identity.upS = value
    return value >= 0 && value <= longestUpS
  }
  identity[label] = value
  // Both count in 32 bit.
  return isBoot(value)
}

interface Meaning {
  quality: Quality
  raw: number | null
  value: number | null
  coldJunctionC: number | null
  refused: boolean
}

/** So many numbers in a row that the probe can not show are no glitch any more; common practice, no source. */
const beyondIsFault = 3
/** A number older than this says nothing about a sentinel; common practice, no source. */
const recentMs = 60_000

function meaningOf(one: Named, channel: ChannelMemory, { node, named, secondaryUnits, receivedMs }: Around): Meaning | RefusalReason {
  if (one.record.value === null) return meaningOfText(one.record.text ?? '')
  const sent = inChannelUnit(one.record, node.birth?.channels.get(one.channel)?.kind ?? null, secondaryUnits)
  if (typeof sent === 'string') return sent
  const coldJunctionC = boardTemperature(node, one, channel, named, receivedMs)
  const recent = channel.recent !== null && receivedMs - channel.recent.atMs <= recentMs ? channel.recent.sent : null
  const converted = convert(sent.kind, sent.value, { coldJunctionC, recent })
  if (converted.is === 'fault') return faulty(`fault:${converted.fault}`, false)
  if (converted.is === 'out-of-range') return faulty('fault:range', true)
  if (converted.is === 'beyond') {
    channel.beyondInRow++
    if (channel.beyondInRow >= beyondIsFault) return faulty('fault:range', false)
    return { quality: 'suspect', raw: sent.value, value: converted.value, coldJunctionC, refused: false }
  }
  channel.beyondInRow = 0
  channel.recent = { sent: sent.value, atMs: receivedMs }
  if (converted.assumed) remark(node, 'cold-junction-assumed')
  return { quality: converted.quality, raw: sent.value, value: converted.value, coldJunctionC, refused: false }
}

/** Of `vs`, only faults are read: `fault:open` and its like. */
function meaningOfText(text: string): Meaning | RefusalReason {
  const word = faultWords.find((known) => text === `fault:${known}`)
  if (word !== undefined) return faulty(`fault:${word}`, false)
  return text.startsWith('fault:') ? 'unknown-fault' : 'no-number'
}

const faulty = (quality: Quality, refused: boolean): Meaning => ({ quality, raw: null, value: null, coldJunctionC: null, refused })

/** The number in the unit that the birth document promised; without one the pack's own unit stands. */
function inChannelUnit(
  { value, unit }: SenmlRecord,
  kind: ChannelKind | null,
  secondaryUnits: boolean,
): { value: number; kind: ChannelKind } | 'unknown-unit' | 'unit-version' | 'no-unit' | 'wrong-unit' {
  const number = value ?? 0
  if (unit === null) return kind === null ? 'no-unit' : { value: number, kind }
  const primary = toPrimary(number, unit, secondaryUnits)
  if (typeof primary === 'string') return primary
  if (kind === null) return { value: primary.value, kind: plainKind(primary.unit) }
  return primary.unit === kind.unit ? { value: primary.value, kind } : 'wrong-unit'
}
