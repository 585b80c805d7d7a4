import type { ClientMessage, ServerMessage } from '../../../../server/contract/live.ts'

export interface LinkEars {
  opened(): void
  heard(message: ServerMessage): void
  closed(): void
}

/** Waits between two tries, ms: quick at first, never more than 8 s, so that a router that comes back is found at once. */
const waitsMs = [250, 500, 1000, 2000, 4000, 8000]
/**
 * A socket that has been silent so long is dead even if nobody said so (beats come every 2 s): after a short gap a new one is quicker than
 * the old one's next try, and the service learns that the page is awake before it counts as stopped.
 */
const deadAfterMs = 7000

/** The socket to the service. It tries for ever; whoever listens is told what is heard. */
export class Link {
  readonly #address: string
  readonly #ears: LinkEars
  #socket: WebSocket | null = null
  #timer: ReturnType<typeof setTimeout> | undefined
  #tries = 0
  #heardAt = 0
  #wanted = false

  constructor(address: string, ears: LinkEars) {
    this.#address = address
    this.#ears = ears
  }

  start(): void {
    this.#wanted = true
    this.#connect()
  }

  stop(): void {
    this.#wanted = false
    clearTimeout(this.#timer)
    this.#socket?.close()
    this.#socket = null
  }

  /** False when the link is down; the caller keeps what it wanted to say. */
  send(message: ClientMessage): boolean {
    if (this.#socket?.readyState !== WebSocket.OPEN) return false
    this.#socket.send(JSON.stringify(message))
    return true
  }

  /** Called once a second: drops a socket that fell silent without closing. */
  look(): void {
    if (this.#socket && this.#heardAt > 0 && performance.now() - this.#heardAt > deadAfterMs) this.#drop()
  }

  /** Tries at once, e.g. after the tablet woke up. */
  hurry(): void {
    if (!this.#wanted || this.#socket?.readyState === WebSocket.OPEN) return
    this.#tries = 0
    this.#drop()
    clearTimeout(this.#timer)
    this.#connect()
  }

  #drop(): void {
    const socket = this.#socket
    this.#socket = null
    if (!socket) return
    socket.onopen = socket.onmessage = socket.onclose = null
    socket.close()
    this.#ears.closed()
    this.#again()
  }

  #connect(): void {
    const socket = new WebSocket(this.#address)
    this.#socket = socket
    this.#heardAt = performance.now()
    socket.onopen = () => {
      this.#tries = 0
      this.#ears.opened()
    }
    socket.onmessage = (event: MessageEvent<string>) => {
      this.#heardAt = performance.now()
      const message = JSON.parse(event.data) as ServerMessage
      if (message.type === 'beat') this.#echo(message.n)
      if (message.type === 'hello') this.#echo(0)
      this.#ears.heard(message)
    }
    socket.onclose = () => this.#drop()
  }

  /** Says that this script runs, and whether the page can be seen. */
  #echo(n: number): void {
    this.send({ type: 'echo', n, visible: document.visibilityState === 'visible' })
  }

  #again(): void {
    if (!this.#wanted) return
    const wait = waitsMs[Math.min(this.#tries, waitsMs.length - 1)] ?? 8000
    this.#tries += 1
    clearTimeout(this.#timer)
    this.#timer = setTimeout(() => this.#connect(), wait * (0.75 + 0.5 * Math.random()))
  }
}
