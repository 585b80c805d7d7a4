import type { WebSocket } from 'ws'

/** Above this a client is slow: what comes waits here, the newest of each part only. */
const fullBytes = 64 * 1024
/** Above this it is gone (reliability 5, class 28). */
const goneBytes = 1024 * 1024

/** One browser on the live socket. */
export class Client {
  private readonly socket: WebSocket
  private readonly waiting = new Map<string, string>()

  constructor(socket: WebSocket) {
    this.socket = socket
  }

  /** @param key what the text is about: a later one of the same key takes its place while the client is slow */
  send(key: string, text: string): void {
    if (this.socket.readyState !== this.socket.OPEN) return
    if (this.socket.bufferedAmount > goneBytes) return this.socket.terminate()
    if (this.waiting.size === 0 && this.socket.bufferedAmount <= fullBytes) return this.put(text)
    this.waiting.delete(key) // so that it stands last: the order of sequence numbers is kept
    this.waiting.set(key, text)
  }

  private put(text: string): void {
    this.socket.send(text, () => this.drain())
  }

  private drain(): void {
    for (const [key, text] of this.waiting) {
      if (this.socket.bufferedAmount > fullBytes) return
      this.waiting.delete(key)
      this.socket.send(text, () => this.drain())
    }
  }
}
