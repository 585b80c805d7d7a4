import { createServer as createSecureServer } from 'node:https'
import type { IncomingMessage, Server } from 'node:http'
import type { Duplex } from 'node:stream'
import { getConnInfo } from '@hono/node-server/conninfo'
import { createAdaptorServer } from '@hono/node-server'
import { Hono } from 'hono'
import type { Context } from 'hono'
import { WebSocketServer } from 'ws'
import type { Log } from '../runtime/log.ts'
import { Allowance } from './allowance.ts'
import { failed, mountApi, personAt } from './api.ts'
import { cookieFor, Guard, mayAct } from './guard.ts'
import type { Asked } from './guard.ts'
import { handlersFor } from './handlers.ts'
import type { Instance } from './instance.ts'
import { Hub } from './live/hub.ts'
import { Page } from './page.ts'
import { pairingPage, strangerPage } from './pairing-page.ts'
import type { People } from './people.ts'
import { Problem } from './problem.ts'
import type { Box } from './routes/box.ts'
import type { NodeDoor } from './routes/nodes.ts'
import { safetyHeaders } from './safety.ts'
import type { SetupDoor } from './setup/door.ts'

export interface HttpSetup {
  host: string
  /** PEM texts; the page is then served over TLS and no other way. */
  tls?: { cert: string; key: string } | null
  /** 0 takes a free one. */
  port: number
  /** Folder of the built page. */
  pageFolder: string
  instance: Instance
  people: People
  box: Box
  setup: SetupDoor
  /** Missing where the broker is another's. */
  nodes?: NodeDoor
  access: () => { names: readonly string[]; viewersWithoutLogin: boolean }
  log: Log
}

const largestMessageBytes = 16 * 1024 // reliability 5, class 28
const mostSockets = 100

/** Page, API and live socket on one port, for the kiln at `/` and for a demo at `/demo/`. */
export class HttpDoor {
  private readonly setup: HttpSetup
  private readonly guard: Guard
  private readonly page: Page
  private readonly allowance = new Allowance()
  private readonly sockets = new WebSocketServer({ noServer: true, maxPayload: largestMessageBytes, perMessageDeflate: false })
  private readonly hubs = new Map<'' | '/demo', { instance: Instance; hub: Hub }>()
  private server: Server | null = null

  constructor(setup: HttpSetup) {
    this.setup = setup
    this.guard = new Guard(setup.people, setup.access)
    this.page = new Page(setup.pageFolder)
  }

  async start(): Promise<{ port: number }> {
    this.mount('', this.setup.instance)
    const { fetch } = this.routes()
    const { tls } = this.setup
    const secure = tls ? { createServer: createSecureServer, serverOptions: { ...tls, minVersion: 'TLSv1.2' as const } } : {}
    const server = createAdaptorServer({ fetch, ...secure }) as Server
    this.server = server
    server.headersTimeout = 10_000
    server.requestTimeout = 30_000
    server.on('upgrade', (request, socket, head) => this.upgrade(request, socket, head))
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject)
      server.listen(this.setup.port, this.setup.host, resolve)
    })
    const address = server.address()
    return { port: typeof address === 'object' && address ? address.port : this.setup.port }
  }

  async stop(): Promise<void> {
    for (const base of [...this.hubs.keys()]) this.unmount(base)
    const { server } = this
    if (!server) return
    for (const socket of this.sockets.clients) socket.terminate()
    server.closeAllConnections()
    await new Promise((resolve) => server.close(resolve))
  }

  /** Opens a site under its own address; the demo comes and goes. */
  mount(base: '' | '/demo', instance: Instance): void {
    const hub = new Hub(instance, this.setup.box.version)
    hub.start()
    this.hubs.set(base, { instance, hub })
  }

  unmount(base: '' | '/demo'): void {
    this.hubs.get(base)?.hub.stop()
    this.hubs.delete(base)
  }

  private routes(): Hono {
    const { log, box, people } = this.setup
    const app = new Hono()
    app.onError((problem, context) => failed(problem, log, context))
    app.notFound((context) => failed(new Problem('not-found'), log, context))
    app.use(async (context, next) => {
      const asked = askedOf(context)
      if (!this.guard.knowsHost(asked.host)) return failed(new Problem('unknown-host'), log, context)
      // whoever sits at this machine can load it in other ways
      if (!this.guard.isHere(asked) && !this.allowance.take(asked.remote ?? '', performance.now())) {
        return failed(new Problem('too-many-tries'), log, context)
      }
      const changes = context.req.method !== 'GET' && context.req.method !== 'HEAD'
      if (changes && !this.guard.fromOwnPage(asked)) return failed(new Problem('foreign-page'), log, context)
      await next()
      for (const [name, value] of Object.entries(safetyHeaders(asked.host ?? ''))) context.res.headers.set(name, value)
    })
    const api = {
      handlers: handlersFor(box, people, this.setup.setup, this.setup.nodes),
      who: (context: Context) => this.guard.who(askedOf(context)),
      from: addressOf,
      secure: isSecure,
      noted: (what: string, who: string, from: string) => people.register.note(what, who, from),
      log,
    }
    mountApi(app, '', () => this.hubs.get('')?.instance ?? null, api)
    mountApi(app, '/demo', () => this.hubs.get('/demo')?.instance ?? null, api)
    app.get('/pair', (context) => {
      const text = pairingPage(context.req.query('code') ?? null, context.req.header('accept-language'))
      return text === null ? failed(new Problem('not-found'), log, context) : context.html(text)
    })
    app.post('/pair', (context) => this.pair(context))
    app.get('/demo', (context) => context.redirect('/demo/', 308))
    app.get('*', (context) => {
      const path = context.req.path.replace(/^\/(demo\/)?/, '')
      // without a person the dashboard could only say that it hears nothing
      if (path === '' && this.guard.who(askedOf(context)) === 'anyone') {
        return context.html(strangerPage(context.req.header('accept-language')), 401)
      }
      const gzip = /\bgzip\b/.test(context.req.header('accept-encoding') ?? '')
      return this.page.answer(path, { etag: context.req.header('if-none-match'), gzip }) ?? failed(new Problem('not-found'), log, context)
    })
    return app
  }

  private async pair(context: Context): Promise<Response> {
    const { people } = this.setup
    const from = addressOf(context)
    const { code } = await context.req.parseBody()
    const paired = await people.pairFrom(from, typeof code === 'string' ? code : '')
    people.register.note('pair', paired.device.person, from)
    return new Response(null, { status: 303, headers: { location: '/', 'set-cookie': cookieFor(paired.secret, isSecure(context)) } })
  }

  private upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void {
    const { headers } = request
    const asked: Asked = {
      host: headers.host,
      origin: headers.origin,
      fetchSite: undefined,
      cookie: headers.cookie,
      remote: request.socket.remoteAddress,
    }
    const base = request.url === '/live' ? '' : request.url === '/demo/live' ? '/demo' : null
    const mounted = base === null ? undefined : this.hubs.get(base)
    const refuse = (status: string) => socket.end(`HTTP/1.1 ${status}\r\nconnection: close\r\n\r\n`)
    socket.on('error', () => socket.destroy())
    if (!this.guard.knowsHost(asked.host)) return void refuse('421 Misdirected Request')
    if (!this.guard.fromOwnPage(asked)) return void refuse('403 Forbidden')
    if (!mounted) return void refuse('404 Not Found')
    const who = () => personAt(mounted.instance, this.guard.who(asked))
    if (!mayAct(who(), 'viewer')) return void refuse('401 Unauthorized')
    if (this.sockets.clients.size >= mostSockets) return void refuse('503 Service Unavailable')
    this.sockets.handleUpgrade(request, socket, head, (client) =>
      mounted.hub.join(
        client,
        (least) => mayAct(who(), least),
        () => {
          if (!mounted.instance.demo) this.setup.people.register.note('act', who(), asked.remote ?? '')
        },
      ),
    )
  }
}

const addressOf = (context: Context): string => getConnInfo(context).remote.address ?? ''

/** By the connection itself; a header could say anything. */
const isSecure = (context: Context): boolean => new URL(context.req.url).protocol === 'https:'

function askedOf(context: Context): Asked {
  const { header } = { header: (name: string) => context.req.header(name) }
  return {
    host: header('host'),
    origin: header('origin'),
    fetchSite: header('sec-fetch-site'),
    cookie: header('cookie'),
    remote: addressOf(context),
  }
}
