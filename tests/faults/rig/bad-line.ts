import { connect, createServer, type AddressInfo, type Server, type Socket } from 'node:net'
import { setTimeout as pause } from 'node:timers/promises'

/** A line that delays what it carries and cuts it into pieces, both ways; each piece waits its own time, the order stays. */
export class BadLine {
  readonly #server: Server
  readonly #sockets = new Set<Socket>()
  /** Pieces that were carried. */
  pieces = 0

  /** @param next numbers of 0 to 1 */
  constructor(port: number, mostDelayMs: number, mostBytes: number, next: () => number) {
    const carry = async (from: Socket, to: Socket) => {
      for await (const chunk of from as AsyncIterable<Buffer>) {
        for (let at = 0; at < chunk.length;) {
          const size = 1 + Math.floor(next() * mostBytes)
          await pause(next() * mostDelayMs)
          if (to.destroyed) return
          to.write(chunk.subarray(at, at + size))
          this.pieces++
          at += size
        }
      }
      to.end()
    }
    this.#server = createServer({ noDelay: true }, (near) => {
      const far = connect({ host: '127.0.0.1', port, noDelay: true })
      for (const socket of [near, far]) {
        this.#sockets.add(socket)
        socket.on('error', () => {})
        socket.once('close', () => this.#sockets.delete(socket))
      }
      carry(near, far).catch(() => far.destroy())
      carry(far, near).catch(() => near.destroy())
    })
  }

  async open(): Promise<number> {
    await new Promise<void>((resolve) => this.#server.listen(0, '127.0.0.1', resolve))
    return (this.#server.address() as AddressInfo).port
  }

  async close(): Promise<void> {
    for (const socket of this.#sockets) socket.destroy()
    await new Promise((resolve) => this.#server.close(resolve))
  }
}
