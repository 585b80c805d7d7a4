import { packetTypes } from './wire.ts'

/** Where in an outgoing packet the next byte stands. */
const places = { type: 0, length: 1, topicHigh: 2, topicLow: 3, topic: 4, idHigh: 5, idLow: 6, rest: 7 } as const

/**
 * What the client owes for the messages sent to it, by packet id; read off the bytes that go out. Every acknowledgement passes here, so
 * it walks from byte to byte and keeps nothing else.
 */
export class Owed {
  readonly #owed = new Map<number, number>()
  #place: number = places.type
  #first = 0
  #scale = 1
  /** Bytes of the packet that are still to come. */
  #left = 0
  #topicLeft = 0
  #id = 0

  /** A session that outlived an earlier connection may answer what was sent then. */
  trusting = false

  /** @param chunk the next bytes to the client, cut anywhere */
  sent(chunk: Uint8Array): void {
    for (let at = 0; at < chunk.length;) {
      const skipped = this.#skip(chunk.length - at)
      if (skipped > 0) at += skipped
      else this.#take(chunk[at++] ?? 0)
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

  /** Bytes that say nothing here: of a topic, or of the rest of a packet. */
  #skip(most: number): number {
    if (this.#place === places.topic) {
      const step = Math.min(this.#topicLeft, most)
      this.#topicLeft -= step
      this.#left -= step
      if (this.#topicLeft === 0) this.#place = places.idHigh
      return step
    }
    if (this.#place !== places.rest) return 0
    const step = Math.min(this.#left, most)
    this.#left -= step
    if (this.#left === 0) this.#place = places.type
    return step
  }

  #take(byte: number): void {
    switch (this.#place) {
      case places.type:
        this.#first = byte
        this.#left = 0
        this.#scale = 1
        this.#place = places.length
        return
      case places.length:
        this.#left += (byte & 127) * this.#scale
        this.#scale *= 128
        if (byte < 128) this.#afterLength()
        return
      case places.topicHigh:
        this.#topicLeft = byte << 8
        this.#place = places.topicLow
        break
      case places.topicLow:
        this.#topicLeft |= byte
        this.#place = this.#topicLeft === 0 ? places.idHigh : places.topic
        break
      case places.idHigh:
        this.#id = byte << 8
        this.#place = places.idLow
        break
      default:
        this.#owed.set(this.#id | byte, ((this.#first >> 1) & 3) === 1 ? packetTypes.puback : packetTypes.pubrec)
        this.#place = this.#left === 1 ? places.type : places.rest
    }
    this.#left--
  }

  #afterLength(): void {
    const wantsAnswer = this.#first >> 4 === packetTypes.publish && ((this.#first >> 1) & 3) > 0
    if (this.#left === 0) this.#place = places.type
    else this.#place = wantsAnswer ? places.topicHigh : places.rest
  }
}
