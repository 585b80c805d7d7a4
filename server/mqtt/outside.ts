import { connect, type IPublishPacket, type MqttClient } from 'mqtt'
import type { TurnedAway } from '../contract/setup.ts'
import type { Broker, BrokerEars, Said } from './broker.ts'
import { sitePolicy } from './policy.ts'
import type { Policy } from './policy.ts'
import { Strays } from './strays.ts'

export interface OutsideOptions extends BrokerEars {
  /** `mqtt://` or `mqtts://`, host and port. */
  url: string
  root: string
  site: string
  clientId: string
  username?: string
  password?: string
  /** What the broker says for us when we fall silent. */
  will: Said
  /** Spreads the reconnections of many; 0 to 1. */
  chance?: () => number
}

const leastWaitMs = 1000
const mostWaitMs = 30_000

/** A client of another's broker. Each message is acknowledged to it only when it was stored, and one by one, which slows it when we are slow. */
export function createOutsideBroker(options: OutsideOptions): Broker {
  return new OutsideBroker(options)
}

class OutsideBroker implements Broker {
  readonly #options: OutsideOptions
  /** The newest of each retained topic, said again after every connection: a broker may have forgotten all. */
  readonly #standing = new Map<string, Said>()
  readonly #strays: Strays
  readonly #policy: Policy
  #client: MqttClient | null = null
  #attempts = 0

  constructor(options: OutsideOptions) {
    this.#options = options
    this.#strays = new Strays(options.log)
    this.#policy = sitePolicy(options.root, options.site)
  }

  async start(retained: readonly Said[] = []): Promise<{ port: null }> {
    for (const said of retained) this.#standing.set(said.topic, said)
    const { url, clientId, username, password, will } = this.#options
    const client = connect(url, {
      clientId,
      ...(username !== undefined && { username }),
      ...(password !== undefined && { password }),
      clean: false,
      resubscribe: false,
      reconnectPeriod: leastWaitMs,
      connectTimeout: 10_000,
      queueQoSZero: false,
      will: { topic: will.topic, payload: Buffer.from(will.payload), qos: will.qos, retain: will.retain },
    })
    this.#client = client
    client.handleMessage = (packet, done) => void this.#take(packet, done)
    client.on('connect', () => this.#onConnect(client))
    client.on('close', () => this.#waitLonger(client))
    client.on('error', (error) => this.#options.log.warn({ error: error.message }, 'outside broker'))
    return { port: null }
  }

  async stop(): Promise<void> {
    const client = this.#client
    this.#client = null
    if (client !== null) await client.endAsync(!client.connected)
  }

  async publish(said: Said): Promise<void> {
    if (said.retain) this.#standing.set(said.topic, said)
    const client = this.#client
    // what stands is said on connecting; the rest is of the moment and not worth a queue. Nobody waits for a broker that may be gone.
    if (client?.connected === true) this.#say(client, said)
  }

  #say(client: MqttClient, { topic, payload, qos, retain }: Said): void {
    client.publish(topic, payload, { qos, retain }, (error) => {
      if (error) this.#options.log.warn({ topic, error: error.message }, 'outside broker: publish')
    })
  }

  turnedAway(): TurnedAway {
    return { reasons: {}, topics: this.#strays.topics(), pushedOut: this.#strays.pushedOut() }
  }

  /** Who may come in is the other broker's to say. */
  review(): void {}

  clients(): string[] {
    return []
  }

  #onConnect(client: MqttClient): void {
    this.#attempts = 0
    client.options.reconnectPeriod = leastWaitMs
    const { root, site, log } = this.#options
    const kinds = ['state', 'info', 'readings', 'backlog', 'ack']
    client.subscribe(
      kinds.map((kind) => `${root}/1/${site}/+/${kind}`),
      { qos: 1 },
      (error) => error && log.warn({ error: error.message }, 'outside broker: subscription'),
    )
    for (const said of this.#standing.values()) this.#say(client, said)
  }

  /** Doubles the wait up to half a minute, spread so that many clients do not come back at the same moment. */
  #waitLonger(client: MqttClient): void {
    const { chance = Math.random } = this.#options
    const longest = Math.min(mostWaitMs, leastWaitMs * 2 ** Math.min(this.#attempts++, 10))
    client.options.reconnectPeriod = Math.round(longest / 2 + (chance() * longest) / 2)
  }

  async #take(packet: IPublishPacket, done: (error?: Error) => void): Promise<void> {
    const { root, site, onMessage } = this.#options
    const { topic, payload, qos, retain } = packet
    if (topic.startsWith(`${root}/1/${site}/server/`)) return done()
    // counted by the intake, which gets it too and sets it aside
    const { verdict, reason } = this.#policy.publish(topic, null)
    if (verdict !== 'take') this.#strays.note(reason, topic, performance.now())
    const bytes = typeof payload === 'string' ? Buffer.from(payload) : payload
    try {
      await onMessage({ topic, payload: bytes, qos, retained: retain, client: '' })
      done()
    } catch (error) {
      // unanswered: the broker sends it again after the next connection
      done(error instanceof Error ? error : new Error(String(error)))
      this.#client?.stream.destroy()
    }
  }
}
