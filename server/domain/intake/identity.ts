/**
 * What was already heard of one boot of a node. Pack numbers are remembered for the whole boot, as ranges; prints of packs and the values of
 * samples for a stretch of it, which is longer than any buffer of a node: bounded, and still enough to tell a duplicate from a conflict.
 */
export interface Seen {
  /** Disjoint, ascending, both ends inside. */
  packRanges: [from: number, to: number][]
  /** Pack number to a print of its bytes. */
  packPrints: Map<number, number>
  /** Channel to (time key, ms) to the value as sent, or the fault word. */
  samples: Map<string, Map<number, number | string>>
}

/** At 5 s a pack: 11 hours. */
const mostPrints = 8192
/** Of all channels together: at 5 s and eight channels 5.7 hours of each, nearly three times the buffer of a usual node. */
const mostSamples = 32_768
/** However many channels a node has. */
const fewestSamples = 256
/** Of a node that has few. */
const mostSamplesOfOne = 4096
/** Packs go missing in few places; a sender that skips about more than this is remembered by its newest ranges. */
const mostRanges = 256

export const nothingSeen = (): Seen => ({ packRanges: [], packPrints: new Map(), samples: new Map() })

export type PackSighting =
  /** Never heard. */
  | 'new'
  /** Heard, byte for byte. */
  | 'again'
  /** Its number was heard with other bytes: its samples must be compared one by one. */
  | 'changed'
  /** Its number was heard, too long ago to say what was in it. */
  | 'forgotten'

export function sightPack(seen: Seen, seq: number, print: number): PackSighting {
  const known = seen.packPrints.get(seq)
  if (known !== undefined) return known === print ? 'again' : 'changed'
  return hasPack(seen.packRanges, seq) ? 'forgotten' : 'new'
}

export function rememberPack(seen: Seen, seq: number, print: number): void {
  addPack(seen.packRanges, seq)
  seen.packPrints.set(seq, print)
  dropOldest(seen.packPrints, mostPrints)
}

export type SampleSighting = 'new' | 'again' | 'conflict'

/** Looks a sample up and remembers it when it is new. The first value stays. */
export function sightSample(seen: Seen, channel: string, key: number, sent: number | string): SampleSighting {
  let times = seen.samples.get(channel)
  if (times === undefined) {
    times = new Map()
    seen.samples.set(channel, times)
  }
  const known = times.get(key)
  if (known !== undefined) return known === sent ? 'again' : 'conflict'
  times.set(key, sent)
  dropOldest(times, Math.min(mostSamplesOfOne, Math.max(fewestSamples, Math.floor(mostSamples / seen.samples.size))))
  return 'new'
}

/** 'new' is told without remembering: for packs whose number was used before. */
export function lookUpSample(seen: Seen, channel: string, key: number, sent: number | string): SampleSighting {
  const known = seen.samples.get(channel)?.get(key)
  return known === undefined ? 'new' : known === sent ? 'again' : 'conflict'
}

/** A map keeps the order of arrival, so its first entry is the oldest. */
function dropOldest(map: Map<number, unknown>, most: number): void {
  if (map.size <= most) return
  for (const oldest of map.keys()) {
    map.delete(oldest)
    if (map.size <= most) return
  }
}

function hasPack(ranges: readonly [number, number][], seq: number): boolean {
  for (let i = ranges.length - 1; i >= 0; i--) {
    const range = ranges[i]
    if (range !== undefined && seq >= range[0]) return seq <= range[1]
  }
  return false
}

function addPack(ranges: [number, number][], seq: number): void {
  let i = ranges.length
  while (i > 0 && (ranges[i - 1]?.[0] ?? 0) > seq) i--
  const before = ranges[i - 1]
  const after = ranges[i]
  if (before !== undefined && seq <= before[1]) return
  const joinsBefore = before !== undefined && before[1] === seq - 1
  const joinsAfter = after !== undefined && after[0] === seq + 1
  if (joinsBefore && joinsAfter) {
    before[1] = after[1]
    ranges.splice(i, 1)
  } else if (joinsBefore) before[1] = seq
  else if (joinsAfter) after[0] = seq
  else ranges.splice(i, 0, [seq, seq])
  if (ranges.length > mostRanges) ranges.shift()
}

/** FNV-1a, 32 bit: tells a pack that came again from one that changed, nothing more. */
export function printOf(bytes: Uint8Array): number {
  let hash = 0x811c9dc5
  for (const byte of bytes) hash = Math.imul(hash ^ byte, 0x01000193)
  return hash >>> 0
}
