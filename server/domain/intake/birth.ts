import { converters, sensors } from '../channels/kind.ts'
import { stepOfValue } from '../channels/convert.ts'
import type { ChannelKind } from '../channels/kind.ts'
import { toPrimary } from '../senml/units.ts'

/** What a node says of itself at its start (wire format, birth document). */
export interface Birth {
  hardware: string
  boot: number | null
  clock: 'none' | 'ntp' | 'server' | 'unknown'
  /** Announced URN in front of its names, beside `{site}/{node}/`. */
  urn: string | null
  channels: Map<string, BirthChannel>
  /** Names that only carry the temperature of another channel's cold junction. */
  boards: string[]
}

export interface BirthChannel {
  kind: ChannelKind
  /** Name of the channel that carries the board's temperature. */
  coldJunction: string | null
  periodS: number | null
  /** Step of the converter, in the unit of the value. */
  lsb: number | null
}

export type BirthProblem = { record: number; reason: 'bad-channel' }
export type ReadBirth = { ok: true; birth: Birth; problems: BirthProblem[] } | { ok: false; reason: 'bad-info' }

const mostChannels = 64
export const channelName = /^[A-Za-z0-9][A-Za-z0-9\-._/]{0,63}$/
export const largestBoot = 4_294_967_295

type Fields = Record<string, unknown>
const isObject = (item: unknown): item is Fields => typeof item === 'object' && item !== null && !Array.isArray(item)

/** A channel that is wrong is left out and named; a document that is no birth document at all is refused whole. */
export function readBirth(document: unknown): ReadBirth {
  if (!isObject(document) || !Array.isArray(document['channels']) || document['channels'].length > mostChannels) {
    return { ok: false, reason: 'bad-info' }
  }
  const { boot, clock, hw, urn } = document
  if (boot !== undefined && !isBoot(boot)) return { ok: false, reason: 'bad-info' }
  const channels = new Map<string, BirthChannel>()
  const problems: BirthProblem[] = []
  for (const [record, item] of document['channels'].entries()) {
    const read = readChannel(item)
    if (read === null || channels.has(read.name)) problems.push({ record, reason: 'bad-channel' })
    else channels.set(read.name, read.channel)
  }
  const birth: Birth = {
    hardware: typeof hw === 'string' ? plainText(hw) : '',
    boot: boot ?? null,
    clock: clock === 'none' || clock === 'ntp' || clock === 'server' ? clock : 'unknown',
    urn: typeof urn === 'string' && /^urn:[A-Za-z0-9:\-./_]{1,100}$/.test(urn) ? urn : null,
    channels,
    boards: boardsOf(channels),
  }
  return { ok: true, birth, problems }
}

function boardsOf(channels: ReadonlyMap<string, BirthChannel>): string[] {
  const boards = [...channels.values()].map(({ coldJunction }) => coldJunction)
  return boards.filter((board): board is string => board !== null && !channels.has(board))
}

export const isBoot = (boot: unknown): boot is number =>
  typeof boot === 'number' && Number.isInteger(boot) && boot >= 0 && boot <= largestBoot

function readChannel(item: unknown): { name: string; channel: BirthChannel } | null {
  if (!isObject(item)) return null
  const { n, u = 'Cel', sensor = 'other', converter = 'none', linearised = true, cj, period, lsb, ohm25, beta } = item
  if (typeof n !== 'string' || !channelName.test(n) || typeof u !== 'string' || u.length > 16 || typeof linearised !== 'boolean')
    return null
  const knownSensor = sensors.find((known) => known === sensor)
  const knownConverter = converters.find((known) => known === converter)
  if (knownSensor === undefined || knownConverter === undefined) return null
  if (cj !== undefined && (typeof cj !== 'string' || !channelName.test(cj))) return null
  if (!isWithin(period, 0.05, 86_400) || !isWithin(lsb, 1e-9, 1000) || !isWithin(ohm25, 1, 1e8) || !isWithin(beta, 100, 10_000)) return null
  const primary = toPrimary(1, u, true)
  if (typeof primary === 'string') return null
  const kind: ChannelKind = { unit: primary.unit, sensor: knownSensor, converter: knownConverter, linearised }
  if (ohm25 !== undefined && beta !== undefined) kind.ntc = { ohmAt25C: ohm25, betaK: beta }
  return {
    name: n,
    channel: {
      kind,
      coldJunction: cj ?? null,
      periodS: period ?? null,
      lsb: lsb === undefined ? null : stepOfValue(kind, lsb * primary.value),
    },
  }
}

const isWithin = (item: unknown, from: number, to: number): item is number | undefined =>
  item === undefined || (typeof item === 'number' && item >= from && item <= to)

/** What a page may show without a second thought: printable ASCII, at most 64 of it. */
const plainText = (text: string): string => text.replace(/[^ -~]/g, '').slice(0, 64)
