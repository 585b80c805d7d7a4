/** Types of control packets that a client may send (MQTT 3.1.1, 2.2.1). */
export const packetTypes = {
  connect: 1,
  publish: 3,
  puback: 4,
  pubrec: 5,
  pubrel: 6,
  pubcomp: 7,
  subscribe: 8,
  unsubscribe: 10,
  pingreq: 12,
  disconnect: 14,
} as const

/** Size of the body and where it starts; `short` while the length is not all there, `bad` when it has more than four bytes. */
export function readLength(bytes: Buffer, from: number): { bodyAt: number; size: number } | 'short' | 'bad' {
  let size = 0
  let scale = 1
  for (let at = from; at < from + 4; at++) {
    const byte = bytes[at]
    if (byte === undefined) return 'short'
    size += (byte & 127) * scale
    if (byte < 128) return { bodyAt: at + 1, size }
    scale *= 128
  }
  return 'bad'
}
