import { connect, type MqttClient } from 'mqtt'
import { type BuzzerInput, type BuzzerState, type Sound, soundOf, startBuzzer, stepBuzzer } from './rules.ts'

export interface BuzzerSetup {
  broker: string
  root: string
  site: string
  node: string
  boot: number
  /** Told at every change of what the piezo plays. */
  onSound: (sound: Sound) => void
}

type Spoken = BuzzerInput extends infer I ? (I extends { at: number } ? Omit<I, 'at'> : never) : never

function heard(kind: string, payload: Buffer): Spoken | null {
  try {
    const said = JSON.parse(payload.toString('utf8')) as Record<string, unknown>
    if (kind === 'alert') return { kind: 'alert', level: said['level'] as 'none', sound: Number(said['sound']) }
    if (kind === 'beat') return { kind: 'beat', firing: said['firing'] === true }
    if (kind === 'state') return { kind: 'server', online: said['s'] !== 'offline' }
    if (kind === 'cmd' && said['do'] === 'beep') return { kind: 'beep' }
  } catch {
    // what cannot be read is no beat: the silence limit then speaks
  }
  return null
}

/** A buzzer node as the firmware notes describe it: the reference for makers, and the ear of our own tests. */
export class Buzzer {
  readonly #setup: BuzzerSetup
  #state: BuzzerState
  #client: MqttClient | null = null
  #timer: NodeJS.Timeout | null = null
  #last = ''

  constructor(setup: BuzzerSetup, firing = false) {
    this.#setup = setup
    this.#state = startBuzzer(performance.now(), firing)
  }

  start(): void {
    const { broker, root, site, node, boot } = this.#setup
    const own = `${root}/1/${site}/${node}`
    const will = { topic: `${own}/state`, payload: Buffer.from(JSON.stringify({ s: 'lost', boot })), qos: 1 as const, retain: true }
    const client = connect(broker, { clientId: `${site}-${node}`, protocolVersion: 4, keepalive: 5, reconnectPeriod: 1000, will })
    this.#client = client
    client.on('connect', () => {
      this.#take({ kind: 'link', up: true })
      client.publish(`${own}/state`, JSON.stringify({ s: 'ready', boot }), { qos: 1, retain: true })
      client.publish(`${own}/info`, JSON.stringify({ fw: '1.0.0', hw: 'buzzer', boot, clock: 'none', buffer: 0, channels: [] }), {
        qos: 1,
        retain: true,
      })
      client.subscribe(
        [`${root}/1/${site}/server/alert`, `${root}/1/${site}/server/beat`, `${root}/1/${site}/server/state`, `${own}/cmd`],
        { qos: 1 },
      )
    })
    client.on('close', () => this.#take({ kind: 'link', up: false }))
    client.on('error', () => this.#take({ kind: 'link', up: false }))
    client.on('message', (topic, payload) => {
      const kind = topic.slice(topic.lastIndexOf('/') + 1)
      const input = heard(kind, payload)
      if (input) this.#take(input)
      if (kind === 'cmd') this.#answer(`${own}/ack`, payload)
    })
    this.#timer = setInterval(() => this.#take({ kind: 'tick' }), 250)
  }

  /** What the probe of its own in the condenser's outlet reads, °C; null where it gives nothing. */
  probe(celsius: number | null): void {
    this.#take({ kind: 'outlet', celsius })
  }

  async stop(): Promise<void> {
    if (this.#timer) clearInterval(this.#timer)
    await this.#client?.endAsync()
  }

  #answer(topic: string, payload: Buffer): void {
    try {
      const { id } = JSON.parse(payload.toString('utf8')) as { id?: unknown }
      this.#client?.publish(topic, JSON.stringify({ id, ok: true }), { qos: 1 })
    } catch {
      // a command that cannot be read has no id to answer to
    }
  }

  #take(input: Spoken): void {
    const at = performance.now()
    this.#state = stepBuzzer(this.#state, { ...input, at })
    const sound = soundOf(this.#state, at)
    const text = JSON.stringify(sound)
    if (text === this.#last) return
    this.#last = text
    this.#setup.onSound(sound)
  }
}
