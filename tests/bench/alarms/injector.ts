import { setTimeout as pause } from 'node:timers/promises'
import mqtt from 'mqtt'
import type { MqttClient } from 'mqtt'
import { driveApp, post, type DrivenApp } from '../../support/driven-app.ts'
import { Ear } from './ear.ts'

const topic = 'firing/1/yard/n1/readings'
/** Half a second past the second, so that the reading raises the alarm and no tick does. */
const start = Date.UTC(2026, 5, 1, 6, 0, 5, 500)
const checkpointEveryMs = 300_000
const warning = 2

export interface Heard {
  /** From the reading to the sound; null when it never came. */
  ms: number | null
  /** What service, broker and buzzer together computed meanwhile, whatever else the machine did. */
  cpuMs: number
}

/** A burning kiln whose fire is made to die and come back, again and again. */
export class Injector {
  readonly live: DrivenApp
  private readonly ear: Ear
  private at = start
  private seq = 0
  /** The disk is full: nothing is acknowledged any more, and the broker closes who sends. */
  private unacknowledged = false
  private connections = 0
  private fresh!: Promise<MqttClient>
  private turn: Promise<void> = Promise.resolve()

  private constructor(live: DrivenApp, ear: Ear) {
    this.live = live
    this.ear = ear
  }

  /** @param folder where the data go; null for a fresh folder */
  static async start(folder: string | null): Promise<Injector> {
    const live = await driveApp({ at: start, ...(folder === null ? {} : { folder }) })
    const ear = new Ear(live.mqttPort ?? 0)
    ear.start()
    const injector = new Injector(live, ear)
    await post(`${live.url}/api/acts`, { id: 'lit', kiln: 'kiln-1', act: { action: 'light' } })
    for (let n = 0; n < 90; n++) await injector.read(10, 600)
    return injector
  }

  async stop(): Promise<void> {
    await this.ear.stop()
    if (this.unacknowledged) await (await this.fresh).endAsync(true)
    await this.live.client.endAsync(true)
    await this.live.app.stop().catch(() => undefined)
  }

  /** That the disk is full is an alarm itself; once it is hushed, the next one is heard. */
  async untilDiskIsFull(): Promise<void> {
    this.unacknowledged = true
    this.fresh = this.connect()
    while ((await this.ear.hear(warning)) === null);
    const hushed = { id: 'hushed', kiln: 'kiln-1', act: { action: 'acknowledge', alarm: 'storage-failing' } }
    await post(`${this.live.url}/api/acts`, hushed) // not stored, but taken
    await this.ear.hear(0)
  }

  /**
   * The fire dies, is told, and comes back. Gives what the sound took from the reading that made the alarm. One alarm comes 143 s after the
   * other, so that they meet every second of the house's own beats (3, 10 and 300 s) in turn.
   */
  async alarm(setup: { atCheckpoint: boolean }): Promise<Heard> {
    if (setup.atCheckpoint) await this.rest(this.untilCheckpoint(70_000) / 1000)
    // the alarm waits a minute (its on-delay), and as long to end
    await this.readTwice(300)
    await this.read(30, 300)
    this.move(29)
    await this.settled()
    const told = this.ear.hear(warning)
    const from = performance.now()
    const spent = process.cpuUsage()
    void this.read(1, 300)
    const heardAt = await told
    const { user, system } = process.cpuUsage(spent)
    await this.readTwice(600)
    await this.read(32, 600)
    await this.turn
    this.move(31)
    await this.ear.hear(0)
    return { ms: heardAt === null ? null : heardAt - from, cpuMs: (user + system) / 1000 }
  }

  /** Ms until a reading `aheadMs` from now falls half a second after a checkpoint. */
  private untilCheckpoint(aheadMs: number): number {
    const lands = this.at + aheadMs - 500
    return (checkpointEveryMs - (lands % checkpointEveryMs)) % checkpointEveryMs
  }

  private async rest(seconds: number): Promise<void> {
    for (let left = seconds; left > 0; left -= 35) await this.read(Math.min(35, left), 600)
  }

  private move(stepS: number): void {
    this.at += stepS * 1000
    this.live.clock.moveTo(this.at)
  }

  /** Two values 5 s apart in one message: one alone is an outlier, the second makes it a step. */
  private readTwice(firebox: number): Promise<void> {
    return this.read(10, firebox, [{ n: 'firebox', v: firebox, t: -5 }])
  }

  /** One after the other: while the disk is full each goes out on a connection of its own, which the broker closes. */
  private read(stepS: number, firebox: number, before: object[] = []): Promise<void> {
    return (this.turn = this.turn.then(() => this.say(stepS, firebox, before)))
  }

  private async say(stepS: number, firebox: number, before: object[]): Promise<void> {
    this.seq++
    this.move(stepS)
    const pack = [
      { bn: 'yard/n1/', bu: 'Cel', ut: 5 },
      ...before,
      { n: 'firebox', v: firebox + (this.seq % 3), t: 0 },
      { n: 'wall', v: 60 + (this.seq % 5) },
      { n: 'boot', u: 'count', v: 1 },
      { n: 'seq', u: 'count', v: this.seq },
      { n: 'up', u: 's', v: (this.at - start) / 1000 },
    ]
    const message = JSON.stringify(pack)
    if (!this.unacknowledged) return void (await this.live.client.publishAsync(topic, message, { qos: 1 }))
    const node = await this.fresh
    const closed = new Promise<void>((done) => node.once('close', () => done()))
    node.publish(topic, message, { qos: 1 })
    await closed
    this.fresh = this.connect()
  }

  private async connect(): Promise<MqttClient> {
    const clientId = `kiln${++this.connections}`
    const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${String(this.live.mqttPort)}`, { clientId, reconnectPeriod: 0 })
    // what was on its way when the broker closed makes that a reset
    client.on('error', () => undefined)
    return client
  }

  /** What was asked of the loop before has been done. */
  private async settled(): Promise<void> {
    await pause(5)
    if (this.unacknowledged) await this.fresh
  }
}
