import { connect, type Socket } from 'node:net'
import { setTimeout as pause } from 'node:timers/promises'
import { connectPacket, publishPacket } from '../../integration/mqtt/raw-client.ts'

/** Nodes that publish as fast as they are acknowledged, each with some messages in flight; remembers what was acknowledged. */
export class Load {
  /** Payloads that were acknowledged. */
  readonly acknowledged = new Set<string>()
  readonly #sockets: Socket[] = []
  readonly #run: string

  /** @param run makes the payloads of one run differ from another's */
  constructor(run: string) {
    this.#run = run
  }

  start(port: number, nodes: number, inFlight: number): void {
    for (let node = 1; node <= nodes; node++) this.#sockets.push(this.#node(port, `n${node}`, inFlight))
  }

  /** Until so many were acknowledged, or every connection was closed by the other side. */
  async until(count: number): Promise<void> {
    const over = () => this.acknowledged.size >= count || this.#sockets.every((socket) => socket.closed)
    for (let waits = 0; !over() && waits < 2000; waits++) await pause(10)
  }

  stop(): void {
    for (const socket of this.#sockets.splice(0)) socket.destroy()
  }

  #node(port: number, name: string, inFlight: number): Socket {
    const socket = connect({ host: '127.0.0.1', port, noDelay: true })
    const sent = new Map<number, string>()
    let next = 0
    let held = Buffer.alloc(0)
    const publish = () => {
      const payload = `{"outlet":${++next},"of":"${this.#run}/${name}"}`
      const id = 1 + (next % 65_535)
      sent.set(id, payload)
      socket.write(publishPacket(`firing/1/yard/${name}/readings`, payload, 1, id))
    }
    socket.on('error', () => {})
    socket.on('connect', () => socket.write(connectPacket(`${this.#run}-${name}`)))
    socket.on('data', (chunk: Buffer) => {
      held = Buffer.concat([held, chunk])
      for (; held.length >= 4; held = held.subarray(4)) {
        if (held[0] === 0x20) for (let n = 0; n < inFlight; n++) publish()
        else if (held[0] === 0x40) {
          const id = held.readUInt16BE(2)
          this.acknowledged.add(sent.get(id) ?? '')
          sent.delete(id)
          publish()
        }
      }
    })
    return socket
  }
}
