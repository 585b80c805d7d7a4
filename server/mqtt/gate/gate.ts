import { checkConnect } from './connect.ts'
import type { GateLimits } from './limits.ts'
import { Owed } from './owed.ts'
import { checkPacket } from './packets.ts'
import { packetTypes, readLength } from './wire.ts'

export interface Fault {
  fault: string
  /** Return code of a CONNACK to send before closing. */
  answer?: number
}

/** Lets whole, well-formed packets of one connection through. Pure: bytes in, bytes or a fault out. */
export class Gate {
  readonly owed = new Owed()
  readonly #limits: GateLimits
  #held: Buffer = Buffer.alloc(0)
  #connected = false
  /** Messages let through since `taken` was last read. */
  #messages = 0

  constructor(limits: GateLimits) {
    this.#limits = limits
  }

  get connected(): boolean {
    return this.#connected
  }

  /** A packet has begun and is not all there. */
  get holding(): boolean {
    return this.#held.length > 0
  }

  takeCount(): number {
    const count = this.#messages
    this.#messages = 0
    return count
  }

  /** @returns the whole packets in order, possibly none */
  take(chunk: Buffer): Buffer | Fault {
    const bytes = this.#held.length === 0 ? chunk : Buffer.concat([this.#held, chunk])
    let at = 0
    while (at < bytes.length) {
      const length = readLength(bytes, at + 1)
      const early = this.#checkHead(bytes[at] ?? 0, length)
      if (early !== null) return early
      if (typeof length === 'string') break
      const end = length.bodyAt + length.size
      if (end > bytes.length) break
      const fault = this.#check(bytes, at, length.bodyAt, end)
      if (fault !== null) return fault
      at = end
    }
    // a copy, so that the socket's slab is not kept for the sake of a few bytes
    this.#held = at === bytes.length ? Buffer.alloc(0) : Buffer.from(bytes.subarray(at))
    return bytes.subarray(0, at)
  }

  /** What can be refused from the fixed header alone, before the body is there. */
  #checkHead(head: number, length: ReturnType<typeof readLength>): Fault | null {
    if (!this.#connected && head !== packetTypes.connect << 4) return { fault: 'not-connected' }
    if (length === 'bad') return { fault: 'bad-length' }
    if (length === 'short') return null
    const most = this.#connected ? this.#limits.packetBytes : this.#limits.connectBytes
    return length.size > most ? { fault: 'packet-too-large' } : null
  }

  #check(bytes: Buffer, at: number, bodyAt: number, end: number): Fault | null {
    const head = bytes[at] ?? 0
    if (this.#connected) {
      if (head >> 4 === packetTypes.publish) this.#messages++
      const fault = checkPacket(head, bytes, bodyAt, end, this.owed)
      return fault === null ? null : { fault }
    }
    const verdict = checkConnect(bytes.subarray(at, end), bodyAt - at)
    if (!('fine' in verdict)) return verdict
    this.#connected = true
    this.owed.trusting = !verdict.fine.clean
    return null
  }
}
