import { createServer, type AddressInfo, type Server, type Socket } from 'node:net'
import { createServer as createSecureServer } from 'node:tls'
import { BrokerProblem, type BrokerProblemCode, type Log } from '../broker.ts'
import { Gate } from './gate.ts'
import type { GateLimits } from './limits.ts'

const listenCodes: Record<string, BrokerProblemCode> = {
  EADDRINUSE: 'port-taken',
  EACCES: 'port-forbidden',
  EADDRNOTAVAIL: 'no-such-address',
  ENOTFOUND: 'no-such-address',
}

/** Listens, counts connections, and hands on those whose packets pass the gate. */
export class Door {
  readonly #limits: GateLimits
  readonly #log: Log
  readonly #handOn: (socket: Socket) => void
  readonly #sockets = new Set<Socket>()
  #server: Server | null = null
  /** Connections turned away or closed, and whatever else the broker refused, by reason. */
  readonly refused: Record<string, number> = {}

  constructor(limits: GateLimits, log: Log, handOn: (socket: Socket) => void) {
    this.#limits = limits
    this.#log = log
    this.#handOn = handOn
  }

  async listen(host: string, port: number, tls: { cert: string; key: string } | null = null): Promise<number> {
    const admit = (socket: Socket) => this.#admit(socket)
    const server = tls
      ? createSecureServer({ ...tls, minVersion: 'TLSv1.2', noDelay: true }, admit)
      : createServer({ noDelay: true }, admit)
    server.on('tlsClientError', (_error, socket: Socket) => this.#turnAway('no-tls', socket.remoteAddress ?? ''))
    this.#server = server
    await new Promise<void>((resolve, reject) => {
      server.once('error', (error: NodeJS.ErrnoException) =>
        reject(new BrokerProblem(listenCodes[error.code ?? ''] ?? 'unknown', error.message)),
      )
      server.listen(port, host, resolve)
    })
    // too many open files ends one accept, not the service
    server.on('error', (error) => this.#log.warn({ error: error.message }, 'mqtt listener'))
    return (server.address() as AddressInfo).port
  }

  /** @returns when the last connection has gone */
  async stopListening(): Promise<void> {
    const server = this.#server
    this.#server = null
    if (server !== null) await new Promise((resolve) => server.close(resolve))
  }

  closeAll(): void {
    for (const socket of this.#sockets) socket.destroy()
  }

  #admit(socket: Socket): void {
    const address = socket.remoteAddress ?? ''
    const same = [...this.#sockets].filter((other) => other.remoteAddress === address).length
    if (this.#sockets.size >= this.#limits.connections || same >= this.#limits.connectionsPerAddress) {
      this.#turnAway('too-many-connections', address)
      socket.destroy()
      return
    }
    this.#sockets.add(socket)
    socket.once('close', () => this.#sockets.delete(socket))
    socket.on('error', () => {})
    guard(socket, new Gate(this.#limits), this.#limits, (fault) => this.#turnAway(fault, address))
    this.#handOn(socket)
  }

  count(reason: string): void {
    this.refused[reason] = (this.refused[reason] ?? 0) + 1
  }

  #turnAway(fault: string, address: string): void {
    this.count(fault)
    this.#log.warn({ fault, address }, 'mqtt connection refused')
  }
}

/**
 * Puts the gate into the socket itself: the broker behind reads through it. What is written passes too, so that the gate knows which
 * answers are owed.
 */
function guard(socket: Socket, gate: Gate, limits: GateLimits, onFault: (fault: string) => void): void {
  const read = socket.read.bind(socket)
  const write = socket.write.bind(socket)
  let allowance = limits.burst
  let countedAt = performance.now()
  let resting: NodeJS.Timeout | null = null
  let refused = false

  const refuse = (fault: string, answer?: number) => {
    if (refused) return
    refused = true
    onFault(fault)
    if (answer === undefined) socket.destroy()
    else {
      write(Buffer.from([0x20, 2, 0, answer]))
      socket.destroySoon()
    }
  }
  let late = setTimeout(() => refuse('connect-late'), limits.connectWithinMs)
  const watch = () => {
    clearTimeout(late)
    if (!gate.connected) late = setTimeout(() => refuse('connect-late'), limits.connectWithinMs)
    else if (gate.holding) late = setTimeout(() => refuse('packet-late'), limits.packetWithinMs)
  }
  socket.once('close', () => {
    clearTimeout(late)
    if (resting !== null) clearTimeout(resting)
  })

  /** True when the sender has to wait; its bytes stay in the socket, which slows it down and nobody else. */
  const mustRest = () => {
    const now = performance.now()
    allowance = Math.min(limits.burst, allowance + ((now - countedAt) / 1000) * limits.messagesPerS)
    countedAt = now
    if (allowance >= 0) return false
    resting ??= setTimeout(
      () => {
        resting = null
        socket.emit('readable')
      },
      Math.ceil((-allowance / limits.messagesPerS) * 1000) + 1,
    )
    return true
  }

  socket.read = (size?: number) => {
    if (refused || resting !== null || mustRest()) return null
    const chunk = read(size) as Buffer | null
    if (chunk === null) return null
    const wasConnected = gate.connected
    const wasHolding = gate.holding
    const taken = gate.take(chunk, Math.max(1, Math.floor(allowance)))
    if ('fault' in taken) {
      refuse(taken.fault, taken.answer)
      return null
    }
    allowance -= gate.begun
    if (taken.rest.length > 0) socket.unshift(taken.rest)
    const { passed } = taken
    if (gate.connected !== wasConnected || gate.holding !== wasHolding) watch()
    return passed.length === 0 ? null : passed
  }
  socket.write = ((chunk: Uint8Array | string, ...rest: never[]) => {
    gate.owed.sent(typeof chunk === 'string' ? Buffer.from(chunk) : chunk)
    return write(chunk, ...rest)
  }) as Socket['write']
}
