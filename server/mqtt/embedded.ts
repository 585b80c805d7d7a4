import { setTimeout as pause } from 'node:timers/promises'
import { Aedes, type Client, type PublishPacket, type Subscription } from 'aedes'
import type { TurnedAway } from '../contract/setup.ts'
import type { Broker, BrokerEars, Said } from './broker.ts'
import { Door } from './gate/door.ts'
import { gateLimits, type GateLimits } from './gate/limits.ts'
import { Takeovers } from './gate/takeovers.ts'
import { Forwarding } from './forwarding.ts'
import { limitQueues } from './queues.ts'
import type { NodeGate } from './node-keys.ts'
import { Strays } from './strays.ts'
import { sitePolicy, type Policy, type Verdict } from './policy.ts'

export interface EmbeddedOptions extends BrokerEars {
  host: string
  /** PEM texts; nodes then come in over TLS only. */
  tls?: { cert: string; key: string } | null
  /** 0 takes a free one. */
  port: number
  root: string
  site: string
  limits?: Partial<GateLimits>
  /** In place of the site's own; for a check of the protocol alone. */
  policy?: Policy
  /** Who may come in, and for whom; everybody when it is missing. */
  nodes?: NodeGate
}

const stopWaitMs = 10
const mostStopWaits = 200

export function createBroker(options: EmbeddedOptions): Broker {
  return new EmbeddedBroker(options)
}

class EmbeddedBroker implements Broker {
  readonly #options: EmbeddedOptions
  readonly #policy: Policy
  readonly #limits: GateLimits
  readonly #door: Door
  readonly #takeovers: Takeovers
  readonly #forwarding = new Forwarding()
  readonly #aedes: Aedes
  /** What a connection said last, and so which node it speaks for. */
  readonly #spoken = new WeakMap<Client, { topic: string; verdict: Verdict }>()
  /** Nodes of connections that came with a secret. */
  readonly #proven = new WeakMap<Client, string>()
  /** What a connection came in with, to be judged anew. */
  readonly #cameWith = new WeakMap<Client, { username: string; password: string }>()
  /** Messages that end here: nobody may subscribe to them, and a retained reading would come back as a fresh one. */
  readonly #unshared = new WeakSet<object>()
  /** Topics of nodes that the broker keeps the last message of. */
  readonly #retained = new Set<string>()
  readonly #strays: Strays
  /** Messages on their way to the disk. */
  #storing = 0
  #stopping = false

  constructor(options: EmbeddedOptions) {
    this.#options = options
    this.#policy = options.policy ?? sitePolicy(options.root, options.site)
    this.#limits = { ...gateLimits, ...options.limits }
    this.#takeovers = new Takeovers(this.#limits.takeoversPerMin)
    this.#aedes = new Aedes({
      // connections of 3.1 with longer names are turned away at the gate
      maxClientsIdLength: 23,
      // the gate's own clock runs out first
      connectTimeout: 2 * this.#limits.connectWithinMs,
      drainTimeout: this.#limits.drainWithinMs,
      preConnect: (_client, packet, done) => this.#admit(packet.clientId, done),
      authenticate: (client, username, password, done) => done(null, this.#comesIn(client, username ?? '', password?.toString() ?? '')),
      authorizePublish: (client, packet, done) => this.#authorizePublish(client, packet, done),
      authorizeSubscribe: (client, subscription, done) => this.#authorizeSubscribe(client, subscription, done),
      authorizeForward: (client, packet) => {
        this.#forwarding.lower(client, packet)
        return packet
      },
    })
    this.#endHere()
    this.#strays = new Strays(options.log)
    this.#door = new Door(this.#limits, options.log, (socket) => this.#aedes.handle(socket))
    this.#aedes.on('clientError', (client, error) => options.log.warn({ client: client.id, error: error.message }, 'mqtt client'))
    this.#aedes.on('connectionError', (_client, error) => options.log.warn({ error: error.message }, 'mqtt connection'))
  }

  async start(retained: readonly Said[] = []): Promise<{ port: number }> {
    await this.#aedes.listen()
    limitQueues(this.#aedes, this.#limits.waiting)
    this.#forwarding.attach(this.#aedes)
    for (const said of retained) await this.publish(said)
    return { port: await this.#door.listen(this.#options.host, this.#options.port, this.#options.tls) }
  }

  /** What is being stored is still acknowledged; what comes later, wills too, is not taken: it is we who leave, not the nodes. */
  async stop(): Promise<void> {
    this.#stopping = true
    const closed = this.#door.stopListening()
    for (let waits = 0; this.#storing > 0 && waits < mostStopWaits; waits++) await pause(stopWaitMs)
    await new Promise<void>((resolve) => this.#aedes.close(resolve))
    this.#door.closeAll()
    await closed
  }

  async publish({ topic, payload, qos, retain }: Said): Promise<void> {
    await new Promise<void>((resolve, reject) => {
      const packet: PublishPacket = { cmd: 'publish', topic, payload: Buffer.from(payload), qos, retain, dup: false }
      this.#aedes.publish(packet, (error) => (error ? reject(error) : resolve()))
    })
  }

  clients(): string[] {
    const { clients } = this.#aedes as unknown as { clients: Record<string, Client> }
    return Object.keys(clients)
  }

  turnedAway(): TurnedAway {
    return { reasons: this.#door.refused, topics: this.#strays.topics(), pushedOut: this.#strays.pushedOut() }
  }

  review(): void {
    const { clients } = this.#aedes as unknown as { clients: Record<string, Client> }
    for (const client of Object.values(clients)) {
      const { username, password } = this.#cameWith.get(client) ?? { username: '', password: '' }
      const found = this.#options.nodes?.judge(username, password)
      if (found !== null && this.#mayBe(client, this.#spoken.get(client)?.verdict.node ?? null)) continue
      this.#options.log.warn({ client: client.id }, 'mqtt connection ended: it could not come in like this any more')
      this.#door.count('no-longer-welcome')
      client.close()
    }
  }

  #admit(clientId: string, done: (error: Error | null, success: boolean) => void): void {
    const taken = this.clients().includes(clientId)
    if (!taken || this.#takeovers.allow(clientId, performance.now())) return done(null, true)
    // two nodes with one name throw each other out for ever: both are sent away and the name is told
    this.#options.log.warn({ client: clientId }, 'two nodes use the same client id')
    this.#door.count('same-name')
    const { clients } = this.#aedes as unknown as { clients: Record<string, Client> }
    clients[clientId]?.close()
    done(new Error('too many takeovers'), false)
  }

  #comesIn(client: Client, username: string, password: string): boolean {
    const { nodes, log } = this.#options
    const found = nodes ? nodes.judge(username, password) : { node: null }
    if (found === null) {
      log.warn({ client: client.id, username }, 'mqtt login refused')
      this.#door.count('wrong-secret')
      return false
    }
    this.#cameWith.set(client, { username, password })
    if (found.node !== null) this.#proven.set(client, found.node)
    return true
  }

  /** False for who speaks for a paired node without its secret. */
  #mayBe(client: Client | null, node: string | null): boolean {
    if (node === null || client === null || !this.#options.nodes?.needsSecret(node)) return true
    return this.#proven.get(client) === node
  }

  /** Called for every message, wills and QoS 0 too, and before any acknowledgement: here it is stored. */
  #authorizePublish(client: Client | null, packet: PublishPacket, done: (error?: Error | null) => void): void {
    if (this.#stopping) return done(new Error('stopping'))
    const { topic, payload, qos } = packet
    const sender = client?.id ?? ''
    const { verdict, reason, share } = this.#verdict(client, topic)
    if (verdict === 'close') {
      this.#options.log.warn({ client: sender, topic, reason }, 'mqtt publish refused')
      this.#door.count(reason)
      return done(new Error(reason))
    }
    if (verdict === 'quarantine') {
      this.#door.count(reason)
      this.#strays.note(reason, topic, performance.now())
    }
    if (!share) this.#unshared.add(packet)
    packet.retain &&= share && this.#mayRetain(topic)
    // whoever hears it hears it for the first time (MQTT 3.3.1-3)
    packet.dup = false
    const bytes = typeof payload === 'string' ? Buffer.from(payload) : payload
    const message = { topic, payload: bytes, qos, retained: false, client: sender }
    const kept =
      verdict === 'take' ? this.#options.onMessage(message) : this.#options.onRefused?.({ sender, topic, reason, payload: bytes })
    if (kept === undefined) return done(null)
    this.#storing++
    const end = (error: unknown) => {
      this.#storing--
      done(error === null || error instanceof Error ? error : new Error(String(error)))
    }
    kept.then(() => end(null), end)
  }

  /** A node says the same topic again and again, so the last answer is kept. */
  #verdict(client: Client | null, topic: string): Verdict {
    if (client === null) return this.#policy.publish(topic, null)
    const last = this.#spoken.get(client)
    const isSame = last?.topic === topic
    const verdict = isSame ? last.verdict : this.#policy.publish(topic, last?.verdict.node ?? this.#proven.get(client) ?? null)
    if (!this.#mayBe(client, verdict.node)) return { ...verdict, verdict: 'close', reason: 'needs-its-secret', share: false }
    if (isSame) return verdict
    if (verdict.verdict !== 'close') this.#spoken.set(client, { topic, verdict })
    return verdict
  }

  /** Spares the broker's own way through queues and matching for what nobody may hear; that is nearly everything. */
  #endHere(): void {
    type Publish = (packet: PublishPacket, client: Client, done: (error?: Error | null) => void) => void
    const aedes = this.#aedes as unknown as { publish: Publish }
    const publish = aedes.publish.bind(aedes)
    aedes.publish = (packet, client, done) => {
      if (this.#unshared.has(packet)) done()
      else publish(packet, client, done)
    }
  }

  #mayRetain(topic: string): boolean {
    const fits = this.#retained.has(topic) || this.#retained.size < this.#limits.retained
    if (fits) this.#retained.add(topic)
    return fits
  }

  #authorizeSubscribe(
    client: Client,
    subscription: Subscription,
    done: (error: Error | null, granted?: Subscription | null) => void,
  ): void {
    const { subscriptions } = client as unknown as { subscriptions: Record<string, unknown> }
    const full = Object.keys(subscriptions).length >= this.#limits.subscriptions
    const node = this.#spoken.get(client)?.verdict.node ?? this.#proven.get(client) ?? null
    const [, , , named = ''] = subscription.topic.split('/')
    const allowed = !full && this.#policy.subscribe(subscription.topic, node) && this.#mayBe(client, named)
    if (!allowed) {
      this.#options.log.warn({ client: client.id, filter: subscription.topic }, 'mqtt subscription refused')
      this.#door.count('subscription')
    }
    done(null, allowed ? this.#forwarding.granted(client, subscription) : null)
  }
}
