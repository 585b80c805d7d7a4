import type { WebSocket } from 'ws'
import { z } from 'zod'
import { actIdSchema, actionSchema } from '../../contract/act-schema.ts'
import type { Action } from '../../contract/actions.ts'
import type { KilnView, ServerMessage } from '../../contract/live.ts'
import { ActProblem } from '../../runtime/site.ts'
import type { Instance } from '../instance.ts'
import { Client } from './client.ts'
import { Parts } from './parts.ts'
import type { Change } from './parts.ts'

const beatEveryMs = 2000
/** At most so often, so that many readings a second make few messages. */
const flushEveryMs = 20
const siteEveryMs = 1000
/** What a browser says of a page that is closed or loaded again (RFC 6455, 7.4.1); a page that is cut off says nothing. */
const goingAway = 1001
/** A tablet that was away sends what it kept at once; nobody's hand is faster than this. */
const mostABeat = 200

export const clientMessageSchema = z.discriminatedUnion('type', [
  z.object({ type: z.literal('echo'), n: z.number(), visible: z.boolean() }),
  z.object({
    type: z.literal('act'),
    id: actIdSchema,
    kiln: z.string().min(1).max(64),
    act: actionSchema,
    doneAt: z.number().finite(),
    corrects: actIdSchema.optional(),
  }),
])

/** Everybody who looks at one site: all that is at first, then each part that changed. */
export class Hub {
  private readonly instance: Instance
  private readonly version: string
  private readonly clients = new Map<WebSocket, Client>()
  private readonly mayLook = new Map<WebSocket, () => boolean>()
  private readonly heard = new Map<WebSocket, number>()
  private readonly parts = new Parts()
  private seq = 0
  private beats = 0
  private flushedAt = 0
  private siteAt = 0
  /** Takes back the flush that is to come; null while none is. */
  private takeBack: (() => void) | null = null
  private beating: NodeJS.Timeout | null = null
  private unlisten: () => void = () => {}

  constructor(instance: Instance, version: string) {
    this.instance = instance
    this.version = version
  }

  start(): void {
    this.unlisten = this.instance.listen(() => this.plan())
    this.beating = setInterval(() => this.beat(), beatEveryMs)
  }

  stop(): void {
    this.unlisten()
    if (this.beating) clearInterval(this.beating)
    this.takeBack?.()
    this.takeBack = null
    for (const socket of this.clients.keys()) socket.close(goingAway)
  }

  /** @param may asked anew for each act and at each beat: a browser that was removed hears nothing more */
  join(socket: WebSocket, may: (least: 'viewer' | 'operator') => boolean, acted: () => void = () => {}): void {
    const client = new Client(socket)
    this.flush() // what is older than the greeting must not come after it
    this.clients.set(socket, client)
    this.mayLook.set(socket, () => may('viewer'))
    client.send('hello', JSON.stringify(this.hello()))
    socket.on('close', (code) => {
      if (code === goingAway) this.instance.leave(client)
      for (const known of [this.clients, this.mayLook, this.heard]) known.delete(socket)
    })
    socket.on('error', () => socket.terminate())
    socket.on('message', (data, isBinary) => {
      if (isBinary) return socket.close(1003)
      const heard = (this.heard.get(socket) ?? 0) + 1
      this.heard.set(socket, heard)
      if (heard > mostABeat) return socket.close(1008)
      this.hear(socket, client, String(data as Buffer), () => may('operator'), acted)
    })
  }

  private hear(socket: WebSocket, client: Client, text: string, mayAct: () => boolean, acted: () => void): void {
    const message = parsed(text)
    if (!message) {
      // one mistyped number must not cost the line: the page would send it again at every new one, and nothing after it would arrive
      const id = actIdIn(text)
      if (id === null) return socket.close(1008)
      return this.answer(client, { type: 'act-refused', id, problem: 'not-understood', params: {} })
    }
    if (message.type === 'echo') return this.instance.echo(client, message.visible)
    const { id, kiln, act, doneAt, corrects } = message
    const refuse = (problem: string) => this.answer(client, { type: 'act-refused', id, problem, params: {} })
    if (!mayAct()) return refuse('not-allowed')
    this.instance.act(kiln, { id, act: act as Action, doneAt, ...(corrects === undefined ? {} : { corrects }) }).then(
      () => {
        acted()
        this.answer(client, { type: 'act-taken', id })
      },
      (problem: unknown) => refuse(problem instanceof ActProblem ? problem.code : 'storage-failing'),
    )
  }

  private answer(client: Client, message: Extract<ServerMessage, { id: string }>): void {
    client.send(`act ${message.id}`, JSON.stringify(message))
  }

  private hello(): ServerMessage {
    const { instance } = this
    const kilns: Record<string, KilnView> = {}
    for (const kiln of instance.kilns()) {
      const view = instance.kilnView(kiln)
      if (view) kilns[kiln] = view
    }
    return {
      type: 'hello',
      seq: this.seq,
      version: this.version,
      now: instance.now(),
      speed: instance.speed(),
      clockSure: instance.clockSure(),
      site: instance.siteView(),
      kilns,
    }
  }

  private plan(): void {
    if (this.takeBack || this.clients.size === 0) return
    const wait = this.flushedAt + flushEveryMs - performance.now()
    const run = () => {
      this.takeBack = null
      this.flush()
    }
    // each by its own kind: clearTimeout lets an immediate run
    if (wait > 0) {
      const timer = setTimeout(run, wait)
      this.takeBack = () => clearTimeout(timer)
    } else {
      const next = setImmediate(run)
      this.takeBack = () => clearImmediate(next)
    }
  }

  private flush(): void {
    const now = performance.now()
    this.flushedAt = now
    const { instance } = this
    for (const kiln of instance.kilns()) {
      const view = instance.kilnView(kiln)
      if (view) for (const change of this.parts.ofKiln(kiln, view)) this.tell(change)
    }
    if (now - this.siteAt < siteEveryMs) return
    this.siteAt = now
    for (const change of this.parts.ofSite(instance.siteView())) this.tell(change)
  }

  private tell(change: Change): void {
    this.seq++
    if (this.clients.size === 0) return
    // the part is JSON already; only its envelope is written around it
    const whose = change.type === 'kiln' ? `"kiln":${JSON.stringify(change.kiln)},` : ''
    const text = `{"type":"${change.type}","seq":${this.seq},"now":${this.instance.now()},${whose}"part":"${change.part}","value":${change.text}}`
    for (const client of this.clients.values()) client.send(`${whose}${change.part}`, text)
  }

  private beat(): void {
    this.plan()
    this.heard.clear()
    for (const [socket, mayLook] of this.mayLook) if (!mayLook()) socket.close(1008)
    const message: ServerMessage = { type: 'beat', seq: this.seq, now: this.instance.now(), n: ++this.beats }
    for (const client of this.clients.values()) client.send('beat', JSON.stringify(message))
  }
}

/** The id of an entry that can not be taken as it is; null where the message is none. */
function actIdIn(text: string): string | null {
  try {
    return z.object({ type: z.literal('act'), id: actIdSchema }).parse(JSON.parse(text)).id
  } catch {
    return null
  }
}

function parsed(text: string): z.infer<typeof clientMessageSchema> | null {
  try {
    return clientMessageSchema.parse(JSON.parse(text))
  } catch {
    return null
  }
}
