import { WebSocket } from 'ws'
import type { ChannelView } from '../../../server/contract/live.ts'

/** Pages that look on: each answers the beat as a page's script does, and tells when it heard what the firebox reads. */
export class Tablets {
  readonly tookMs: number[] = []
  private readonly sockets: WebSocket[] = []
  /** By value: when it was sent. A value comes again after forty packs only. */
  private readonly sentAt = new Map<number, number>()

  sent(firebox: number, at: number): void {
    this.sentAt.set(firebox, at)
  }

  async open(url: string, count: number): Promise<void> {
    await Promise.all(
      Array.from({ length: count }, async () => {
        const socket = new WebSocket(`${url.replace('http', 'ws')}/live`)
        this.sockets.push(socket)
        socket.on('message', (data: Buffer) => this.hear(socket, data.toString()))
        socket.on('error', () => undefined)
        await new Promise((resolve, reject) => socket.once('open', resolve).once('error', reject))
      }),
    )
  }

  get stillOpen(): number {
    return this.sockets.filter((socket) => socket.readyState === WebSocket.OPEN).length
  }

  end(): void {
    for (const socket of this.sockets) socket.terminate()
  }

  private hear(socket: WebSocket, text: string): void {
    const at = performance.now()
    const message = JSON.parse(text) as { type: string; n?: number; part?: string; value?: ChannelView[] }
    if (message.type === 'beat') socket.send(JSON.stringify({ type: 'echo', n: message.n, visible: true }))
    if (message.type !== 'kiln' || message.part !== 'channels') return
    const firebox = message.value?.find(({ role }) => role === 'firebox')?.value
    const sentAt = firebox === undefined || firebox === null ? undefined : this.sentAt.get(Math.round(firebox))
    if (sentAt !== undefined && at - sentAt < 20_000) this.tookMs.push(at - sentAt)
  }
}
