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

/** What a client sends of itself and can flood with; answers to what it was sent are owed, and counted there. */
const begun: ReadonlySet<number> = new Set([packetTypes.publish, packetTypes.subscribe, packetTypes.unsubscribe, packetTypes.pingreq])

/** Lets whole, well-formed packets of one connection through. Pure: bytes in, bytes or a fault out. */
export class Gate {
  readonly owed = new Owed()
  readonly #limits: GateLimits
  #held: Buffer = Buffer.alloc(0)
  #connected = false
  /** Packets that the client began, let through at the last `take`. */
  begun = 0

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

  /**
   * @param most packets that the client may begin now
   * @returns the whole packets in order, possibly none, and what follows them because it is more than that
   */
  take(chunk: Buffer, most = Infinity): { passed: Buffer; rest: Buffer } | Fault {
    this.begun = 0
    const bytes = this.#held.length === 0 ? chunk : Buffer.concat([this.#held, chunk])
    let at = 0
    while (at < bytes.length && this.begun < most) {
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
    const left = at === bytes.length ? Buffer.alloc(0) : Buffer.from(bytes.subarray(at))
    const enough = this.begun >= most
    this.#held = enough ? Buffer.alloc(0) : left
    return { passed: bytes.subarray(0, at), rest: enough ? left : Buffer.alloc(0) }
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
      if (begun.has(head >> 4)) this.begun++
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
