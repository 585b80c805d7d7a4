import { entryKinds, type JournalEntry } from '../store.ts'

// Entries cross between threads as one block of bytes: a structured clone of a socket's slice would carry its whole slab along.

const headBytes = 8 + 8 + 1 + 1 + 2 + 2 + 4

/** Numbers little-endian, then kiln, topic (UTF-8) and payload. */
export function packEntries(entries: readonly JournalEntry[]): Uint8Array<ArrayBuffer> {
  let room = 0
  for (const entry of entries) room += headBytes + 3 * (entry.topic.length + (entry.kiln?.length ?? 0)) + entry.payload.length
  // memory of its own, which can be handed over
  const buffer = Buffer.allocUnsafeSlow(room)
  let at = 0
  for (const entry of entries) {
    const kilnBytes = entry.kiln === null ? 0 : buffer.write(entry.kiln, at + headBytes)
    const topicBytes = buffer.write(entry.topic, at + headBytes + kilnBytes)
    buffer.writeDoubleLE(entry.seq, at)
    buffer.writeDoubleLE(entry.at, at + 8)
    buffer.writeUInt8(entryKinds.indexOf(entry.kind), at + 16)
    buffer.writeUInt8((entry.retained ? 1 : 0) | (entry.kiln === null ? 0 : 2), at + 17)
    buffer.writeUInt16LE(kilnBytes, at + 18)
    buffer.writeUInt16LE(topicBytes, at + 20)
    buffer.writeUInt32LE(entry.payload.length, at + 22)
    at += headBytes + kilnBytes + topicBytes
    buffer.set(entry.payload, at)
    at += entry.payload.length
  }
  return new Uint8Array(buffer.buffer as ArrayBuffer, 0, at)
}

export function unpackEntries(bytes: Uint8Array): JournalEntry[] {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const entries: JournalEntry[] = []
  let at = 0
  while (at < buffer.length) {
    const flags = buffer.readUInt8(at + 17)
    const kilnEnd = at + headBytes + buffer.readUInt16LE(at + 18)
    const topicEnd = kilnEnd + buffer.readUInt16LE(at + 20)
    const end = topicEnd + buffer.readUInt32LE(at + 22)
    entries.push({
      seq: buffer.readDoubleLE(at),
      at: buffer.readDoubleLE(at + 8),
      kind: entryKinds[buffer.readUInt8(at + 16)] ?? 'message',
      kiln: (flags & 2) === 0 ? null : buffer.toString('utf8', at + headBytes, kilnEnd),
      topic: buffer.toString('utf8', kilnEnd, topicEnd),
      payload: buffer.subarray(topicEnd, end),
      retained: (flags & 1) === 1,
    })
    at = end
  }
  return entries
}
