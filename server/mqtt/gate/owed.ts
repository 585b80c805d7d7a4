import { packetTypes } from './wire.ts'

/** What the client owes for the messages sent to it, by packet id; read off the bytes that go out. */
export class Owed {
  readonly #owed = new Map<number, number>()
  /** Bytes of the outgoing packet at hand that are still to come, and those of its head. */
  #left = 0
  #head: number[] = []

  /** A session that outlived an earlier connection may answer what was sent then. */
  trusting = false

  /** @param chunk the next bytes to the client, cut anywhere */
  sent(chunk: Uint8Array): void {
    let at = 0
    while (at < chunk.length) {
      if (this.#left === 0) {
        at = this.#readHead(chunk, at)
      } else {
        const step = Math.min(this.#left, chunk.length - at)
        this.#left -= step
        at += step
      }
    }
  }

  /** False when another answer is owed under this id. An answer to nothing is let through: the client may not know that it is done. */
  answer(type: number, id: number): boolean {
    const owed = this.#owed.get(id)
    if (owed === undefined || type === packetTypes.pubrel || this.trusting) return true
    if (type === packetTypes.pubrec) {
      if (owed === packetTypes.puback) return false
      this.#owed.set(id, packetTypes.pubcomp)
      return true
    }
    if (owed !== type) return false
    this.#owed.delete(id)
    return true
  }

  /** Gathers fixed header, and for a PUBLISH that wants an answer its topic and id; the rest is only counted. */
  #readHead(chunk: Uint8Array, from: number): number {
    for (let at = from; at < chunk.length; at++) {
      this.#head.push(chunk[at] ?? 0)
      const found = this.#parse()
      if (found !== null) {
        this.#left = found
        this.#head = []
        return at + 1
      }
    }
    return chunk.length
  }

  /** @returns bytes still to come, or null while the head is not all there */
  #parse(): number | null {
    const head = this.#head
    let size = 0
    let at = 1
    for (let scale = 1; ; scale *= 128) {
      const byte = head[at]
      if (byte === undefined) return null
      size += (byte & 127) * scale
      at++
      if (byte < 128) break
    }
    const first = head[0] ?? 0
    const qos = (first >> 1) & 3
    if (first >> 4 !== packetTypes.publish || qos === 0) return size
    const topicBytes = ((head[at] ?? 0) << 8) | (head[at + 1] ?? 0)
    const idAt = at + 2 + topicBytes
    if (head.length < at + 2 || head.length < idAt + 2) return null
    this.#owed.set(((head[idAt] ?? 0) << 8) | (head[idAt + 1] ?? 0), qos === 1 ? packetTypes.puback : packetTypes.pubrec)
    return size - (idAt + 2 - at)
  }
}
