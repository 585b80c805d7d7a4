import type { MqttClient } from 'mqtt'
import mqtt from 'mqtt'
import type { Fault } from './faults.ts'
import { spoil } from './faults.ts'
import { packOf } from './pack.ts'
import type { Row, Script } from './script.ts'

export interface NodeSetup {
  broker: string
  root: string
  site: string
  node: string
  script: Script
  faults: readonly Fault[]
  /** How much faster than a real firing; the node's own clock stays real. */
  speed: number
  boot: number
  now: () => number
  tell: (event: Record<string, unknown>) => void
}

interface Kept {
  seq: number
  text: string
}

const keptAtMost = 7200
const retryMs = 1000
const threeHoursS = 10_800

/** A birth document may not announce less than a tenth of a second; a firing at 600-fold speed reports faster. */
const announcedS = (periodS: number) => Math.max(0.1, periodS)

/** A sensor node as a careful maker would build one: birth, will, state, identity, back-fill. It measures whether it is heard or not. */
export class VirtualNode {
  readonly counts = { live: 0, backlog: 0, lost: 0 }
  private readonly setup: NodeSetup
  private client: MqttClient | null = null
  private stopped = false
  private boot: number
  private seq = 0
  private bornMs: number
  private upMs = -1
  private trouble = ''
  private away = false
  private keeps = true
  private connected = false
  private filling = false
  private readonly last = new Map<string, number>()
  private readonly kept: Kept[] = []
  private readonly flying = new Set<Promise<void>>()

  constructor(setup: NodeSetup) {
    this.setup = setup
    this.boot = setup.boot
    this.bornMs = setup.now()
  }

  private topic(kind: string): string {
    const { root, site, node } = this.setup
    return `${root}/1/${site}/${node}/${kind}`
  }

  start(): void {
    this.connect()
  }

  private state(s: string): string {
    return JSON.stringify({ s, boot: this.boot })
  }

  private connect(): void {
    if (this.stopped || this.away || this.client) return
    const { broker, site, node } = this.setup
    const client = mqtt.connect(broker, {
      clientId: `${site}-${node}`,
      reconnectPeriod: 0,
      keepalive: 15,
      connectTimeout: 5000,
      queueQoSZero: false,
      will: { topic: this.topic('state'), payload: Buffer.from(this.state('lost')), qos: 1, retain: true },
    })
    this.client = client
    client.on('connect', () => void this.greet(client))
    client.on('message', (_topic, payload) => this.obey(payload.toString()))
    client.on('error', (error) => {
      if (error.message !== this.trouble) this.setup.tell({ event: 'trouble', what: error.message })
      this.trouble = error.message
    })
    client.on('close', () => {
      if (this.client !== client) return
      this.client = null
      this.connected = false
      client.end(true)
      if (!this.stopped && !this.away) setTimeout(() => this.connect(), retryMs)
    })
  }

  /** Birth before readings: who does not know the channels would guess their units. */
  private async greet(client: MqttClient): Promise<void> {
    try {
      await client.subscribeAsync(this.topic('cmd'), { qos: 1 })
      await this.say('info', JSON.stringify(this.birth()), true)
      await this.say('state', this.state('ready'), true)
      this.connected = true
      this.setup.tell({ event: 'connected', node: this.setup.node, boot: this.boot })
      await this.backfill()
    } catch {
      // the close that made it fail brings the next attempt
    }
  }

  private birth(): Record<string, unknown> {
    const { script, speed } = this.setup
    const channels = script.channels.map((channel) => ({ ...channel, period: announcedS(script.periodS / speed) }))
    return { fw: '1.0.0', hw: 'virtual', boot: this.boot, clock: script.clock, buffer: keptAtMost, channels }
  }

  private async say(kind: string, text: string, retain = false): Promise<void> {
    if (!this.client) throw new Error('not connected')
    await this.client.publishAsync(this.topic(kind), text, { qos: 1, retain })
  }

  private obey(text: string): void {
    let command: { id?: unknown; do?: unknown } = {}
    try {
      command = JSON.parse(text) as typeof command
    } catch {
      return
    }
    const known = command.do === 'rebirth' || command.do === 'identify' || command.do === 'beep'
    // a new boot breaks the connection, because the will carries the boot number: the answer goes first
    void this.say('ack', JSON.stringify({ id: command.id, ok: known }))
      .catch(() => {})
      .finally(() => {
        if (command.do === 'rebirth' && !this.stopped) this.reboot()
      })
  }

  /** A new boot number, with `seq` and `up` from zero; what is kept keeps its own identity. */
  private reboot(): void {
    this.boot += 1
    this.seq = 0
    this.upMs = -1
    this.bornMs = this.setup.now()
    this.setup.tell({ event: 'reboot', node: this.setup.node, boot: this.boot })
    this.drop()
    this.connect()
  }

  /** Breaks the connection without goodbye, as a dead battery does. */
  private drop(): void {
    const client = this.client
    this.client = null
    this.connected = false
    client?.stream.destroy()
    client?.end(true)
  }

  /** Measures one row, and says it live when it can. */
  measure(row: Row): void {
    if (this.stopped) return
    const { script, speed, faults, now, site, node } = this.setup
    const stepS = script.periodS
    const holds = (kind: Fault['kind']) => faults.some((f) => f.kind === kind && row.atS >= f.fromS && row.atS < f.toS)
    const starts = (kind: Fault['kind']) => faults.some((f) => f.kind === kind && row.atS >= f.fromS && row.atS < f.fromS + stepS)
    if (starts('reboot')) this.reboot()
    this.comeAndGo(holds('node-lost'), holds('backlog'))
    const readings = spoil(row.readings, row.atS, stepS, faults, this.last)
    for (const { n, v } of readings) if (v !== undefined) this.last.set(n, v)
    const nowMs = now()
    const conflict = holds('conflict') && this.seq > 0
    if (!conflict) this.seq += 1
    // two rows in one millisecond (a late timer at high speed) would share an identity
    const upMs = Math.max(nowMs - this.bornMs, this.upMs + 1)
    this.upMs = upMs
    const upS = upMs / 1000
    const t = script.clock === 'ntp' ? (this.bornMs + upMs) / 1000 + (holds('clock-wrong') ? threeHoursS : 0) : 0
    const pack = packOf(`${site}/${node}/`, readings, { boot: this.boot, seq: this.seq, upS }, t, announcedS(stepS / speed))
    const text = holds('bad-json') ? JSON.stringify(pack).slice(0, -20) : JSON.stringify(pack)
    this.send({ seq: this.seq, text }, holds('retained'))
    if (holds('duplicate')) this.send({ seq: this.seq, text }, false)
  }

  private comeAndGo(lost: boolean, keeping: boolean): void {
    const away = lost || keeping
    this.keeps = !lost
    if (away === this.away) return
    this.away = away
    this.setup.tell({ event: away ? 'gone' : 'back', node: this.setup.node })
    if (away) this.drop()
    else this.connect()
  }

  private send(pack: Kept, retain: boolean): void {
    if (!this.connected) {
      this.keep(pack)
      return
    }
    const told = this.say('readings', pack.text, retain)
      .then(() => void this.counts.live++)
      // not acknowledged: it goes once more as backlog, with the same identity
      .catch(() => this.keep(pack))
      .finally(() => this.flying.delete(told))
    this.flying.add(told)
  }

  private keep(pack: Kept): void {
    if (!this.keeps) {
      this.counts.lost++
      return
    }
    // a pack whose acknowledgement failed comes back after younger ones were kept
    const younger = this.kept.findIndex(({ seq }) => seq > pack.seq)
    this.kept.splice(younger < 0 ? this.kept.length : younger, 0, pack)
    while (this.kept.length > keptAtMost) {
      this.kept.shift()
      this.counts.lost++
    }
  }

  /** Oldest first, one after another, each held until the broker has it. */
  private async backfill(): Promise<void> {
    if (this.filling) return
    this.filling = true
    try {
      for (let next = this.kept[0]; next && this.connected; next = this.kept[0]) {
        await this.say('backlog', next.text)
        this.kept.splice(this.kept.indexOf(next), 1)
        this.counts.backlog++
      }
    } catch {
      // the rest waits for the next connection
    } finally {
      this.filling = false
    }
  }

  get heard(): boolean {
    return this.connected
  }

  /** Says goodbye, so that the will stays silent. */
  async stop(): Promise<void> {
    if (this.stopped) return
    await Promise.allSettled(this.flying)
    if (this.connected) await this.backfill()
    this.stopped = true
    this.counts.lost += this.kept.length
    if (this.connected) await this.say('state', this.state('disconnected'), true).catch(() => {})
    await this.client?.endAsync().catch(() => {})
    this.client = null
  }
}
