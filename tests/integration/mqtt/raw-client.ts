import { connect, type Socket } from 'node:net'

/** A TCP client that speaks bytes, to say what no library would. */
export class RawClient {
  readonly #socket: Socket
  #received = Buffer.alloc(0)
  #wake: (() => void) | null = null
  closed = false

  private constructor(socket: Socket) {
    this.#socket = socket
    socket.on('data', (chunk: Buffer) => {
      this.#received = Buffer.concat([this.#received, chunk])
      this.#wake?.()
    })
    socket.on('close', () => {
      this.closed = true
      this.#wake?.()
    })
    socket.on('error', () => {})
  }

  static async open(port: number): Promise<RawClient> {
    const socket = connect({ host: '127.0.0.1', port, noDelay: true })
    const client = new RawClient(socket)
    await new Promise<void>((resolve, reject) => socket.once('connect', resolve).once('error', reject))
    return client
  }

  send(bytes: Uint8Array): void {
    if (!this.closed) this.#socket.write(bytes)
  }

  /** The next whole packet, or null when the connection was closed or nothing came in time. */
  async packet(withinMs: number): Promise<Buffer | null> {
    const until = performance.now() + withinMs
    for (;;) {
      const size = packetSize(this.#received)
      if (size !== null && this.#received.length >= size) {
        const packet = this.#received.subarray(0, size)
        this.#received = this.#received.subarray(size)
        return packet
      }
      if (this.closed || performance.now() >= until) return null
      await this.#change(until - performance.now())
    }
  }

  async closedWithin(ms: number): Promise<boolean> {
    const until = performance.now() + ms
    while (!this.closed && performance.now() < until) await this.#change(until - performance.now())
    return this.closed
  }

  end(): void {
    this.#socket.destroy()
  }

  async #change(withinMs: number): Promise<void> {
    await new Promise<void>((resolve) => {
      const timer = setTimeout(resolve, withinMs)
      this.#wake = () => {
        clearTimeout(timer)
        resolve()
      }
    })
    this.#wake = null
  }
}

function packetSize(bytes: Buffer): number | null {
  let size = 0
  for (let at = 1, scale = 1; at < 5; at++, scale *= 128) {
    const byte = bytes[at]
    if (byte === undefined) return null
    size += (byte & 127) * scale
    if (byte < 128) return at + 1 + size
  }
  return null
}

/** CONNECT of MQTT 3.1.1 with a clean session. */
export function connectPacket(clientId: string, keepaliveS = 60): Buffer {
  const id = Buffer.from(clientId)
  const body = Buffer.concat([
    Buffer.from([0, 4]),
    Buffer.from('MQTT'),
    Buffer.from([4, 2, keepaliveS >> 8, keepaliveS & 255, id.length >> 8, id.length & 255]),
    id,
  ])
  return Buffer.concat([Buffer.from([0x10, body.length]), body])
}

export function publishPacket(topic: string, payload: string | Uint8Array, qos: 0 | 1, id = 1): Buffer {
  const name = Buffer.from(topic)
  const body = Buffer.concat([
    Buffer.from([name.length >> 8, name.length & 255]),
    name,
    qos === 1 ? Buffer.from([id >> 8, id & 255]) : Buffer.alloc(0),
    Buffer.from(payload),
  ])
  const length: number[] = []
  for (let left = body.length; ;) {
    const digit = left % 128
    left = Math.floor(left / 128)
    length.push(left > 0 ? digit | 128 : digit)
    if (left === 0) break
  }
  return Buffer.concat([Buffer.from([0x30 | (qos << 1), ...length]), body])
}
