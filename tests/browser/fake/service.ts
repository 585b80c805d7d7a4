import { readFile } from 'node:fs/promises'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { extname, join, normalize } from 'node:path'
import { fileURLToPath } from 'node:url'
import { WebSocketServer, type WebSocket } from 'ws'
import { safetyHeaders } from '../../../server/http/safety.ts'
import type { ClientMessage, KilnView, ServerMessage, SiteView } from '../../../server/contract/live.ts'
import { curve, noon, site } from './kiln.ts'

const types: Record<string, string> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
}
const page = process.env.PAGE_FOLDER ?? fileURLToPath(new URL('../../../.build/app/web', import.meta.url))

/** Serves the built page and plays a kiln that stands still, so that layout and words can be tested without a service. */
export class FakeService {
  readonly #server: Server
  readonly #sockets = new WebSocketServer({ noServer: true })
  kilns: Record<string, KilnView>
  site: SiteView = site()
  /** Entries that the page sent, in order, each id once. */
  acts: Extract<ClientMessage, { type: 'act' }>[] = []
  posts: { path: string; body: unknown }[] = []
  answers: Record<string, unknown> = {}
  silent = false
  refuse = false
  #seq = 1
  #beats: ReturnType<typeof setInterval> | undefined
  now = noon

  constructor(view: KilnView | null) {
    this.kilns = view ? { 'kiln-1': view } : {}
    this.#server = createServer((request, response) => void this.#answer(request.url ?? '/', request, response))
    this.#server.on('upgrade', (request, socket, head) => {
      if (this.refuse || !/\/live$/.test(request.url ?? '')) return void socket.destroy()
      this.#sockets.handleUpgrade(request, socket, head, (opened) => this.#open(opened))
    })
  }

  async start(): Promise<string> {
    await new Promise<void>((done) => this.#server.listen(0, '127.0.0.1', done))
    this.#beats = setInterval(() => this.tell({ type: 'beat', seq: this.#seq, now: this.now, n: 1 }), 2000)
    return `http://127.0.0.1:${(this.#server.address() as AddressInfo).port}/`
  }

  async stop(): Promise<void> {
    clearInterval(this.#beats)
    this.cut()
    this.#server.closeAllConnections()
    await new Promise((done) => this.#server.close(done))
  }

  /** Ends every socket. */
  cut(): void {
    for (const socket of this.#sockets.clients) socket.terminate()
  }

  tell(message: ServerMessage): void {
    if (this.silent) return
    for (const socket of this.#sockets.clients) socket.send(JSON.stringify(message))
  }

  /** A part changes. */
  part(part: keyof KilnView, value: unknown): void {
    this.#seq += 1
    const old = this.kilns['kiln-1']
    if (old) this.kilns['kiln-1'] = { ...old, [part]: value }
    this.tell({ type: 'kiln', seq: this.#seq, now: this.now, kiln: 'kiln-1', part, value })
  }

  #open(socket: WebSocket): void {
    if (this.silent) return
    const hello: ServerMessage = {
      type: 'hello',
      seq: this.#seq,
      version: '0.1.0',
      now: this.now,
      speed: 1,
      clockSure: true,
      site: this.site,
      kilns: this.kilns,
    }
    socket.send(JSON.stringify(hello))
    socket.on('message', (data: Buffer) => {
      const message = JSON.parse(data.toString()) as ClientMessage
      if (message.type !== 'act') return
      if (!this.acts.some((act) => act.id === message.id)) this.acts.push(message)
      const taken: ServerMessage = { type: 'act-taken', id: message.id }
      socket.send(JSON.stringify(taken))
    })
  }

  async #answer(url: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
    const path = new URL(url, 'http://fake').pathname.replace(/^\/demo\//, '/')
    if (path.startsWith('/api/')) {
      const chunks: Buffer[] = []
      for await (const chunk of request) chunks.push(chunk as Buffer)
      const text = Buffer.concat(chunks).toString()
      if (request.method !== 'GET') this.posts.push({ path, body: text === '' ? null : JSON.parse(text) })
      const view = this.kilns['kiln-1']
      const answer = path in this.answers ? this.answers[path] : /\/curve(\/current)?$/.test(path) && view ? curve(view) : {}
      response.writeHead(200, { 'content-type': 'application/json' }).end(JSON.stringify(answer))
      return
    }
    const file = normalize(path.endsWith('/') ? `${path}index.html` : path)
    try {
      const body = await readFile(join(page, file))
      response
        .writeHead(200, {
          'content-type': types[extname(file)] ?? 'application/octet-stream',
          ...safetyHeaders(request.headers.host ?? ''),
        })
        .end(body)
    } catch {
      response.writeHead(404).end()
    }
  }
}
