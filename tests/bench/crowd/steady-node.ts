import { connect } from 'node:net'
import { MqttClient } from 'mqtt'

const probes = ['firebox', 'wall', 'outlet', 'smoke', 'ambient', 'core'] as const
const unassigned = ['x1', 'x2', 'x3', 'x4', 'x5', 'x6'] as const

/** Every connection of a yard comes from its own board; on one machine each twenty share an address of the loop (RFC 1122: all of 127/8). */
export const addressOf = (index: number): string => `127.0.${1 + (index >> 8)}.${2 + (index & 127)}`

/** A well-behaved node: six channels in a pack, QoS 1, counted and numbered as the firmware notes say. One of a yard's has the kiln's probes. */
export class SteadyNode {
  sent = 0
  acknowledged = 0
  closed = 0
  readonly waitsMs: number[] = []
  private readonly client: MqttClient
  private readonly name: string
  private readonly channels: readonly string[]
  private readonly began = performance.now()
  private timer: NodeJS.Timeout | undefined
  private seq = 0

  constructor(mqttPort: number, name: string, address: string, watched: boolean) {
    this.name = name
    this.channels = watched ? probes : unassigned
    this.client = new MqttClient(() => connect({ host: '127.0.0.1', port: mqttPort, localAddress: address, noDelay: true }), {
      clientId: name,
      protocolVersion: 4,
      reconnectPeriod: 500,
    })
    this.client.on('close', () => this.closed++)
    this.client.on('error', () => undefined)
  }

  connected(): Promise<void> {
    return new Promise((resolve) => (this.client.connected ? resolve() : this.client.once('connect', () => resolve())))
  }

  /** A pack each `everyMs`. @param onSend what the firebox says and when it was said, ms of this process */
  start(everyMs: number, onSend: (firebox: number, at: number) => void = () => undefined): void {
    this.timer = setInterval(() => {
      const firebox = 500 + (this.seq % 40)
      onSend(firebox, performance.now())
      this.publish('readings', [{ t: 0, firebox }])
    }, everyMs)
  }

  /** An hour that was kept, a second a sample, as packs of ten seconds. Resolves once all is acknowledged. */
  async bringHour(seconds: number): Promise<number> {
    const before = this.waitsMs.length
    for (let s = seconds; s > 0; s -= 10) {
      this.publish(
        'backlog',
        Array.from({ length: 10 }, (_, i) => ({ t: i - s, firebox: 500 + (i % 3) })),
      )
    }
    await this.allAcknowledged(300_000)
    return this.waitsMs.length - before
  }

  pause(): void {
    clearInterval(this.timer)
  }

  async allAcknowledged(withinMs: number): Promise<void> {
    const until = performance.now() + withinMs
    while (this.acknowledged < this.sent && performance.now() < until) await new Promise((resolve) => setTimeout(resolve, 20))
  }

  async end(): Promise<void> {
    this.pause()
    await this.client.endAsync(true)
  }

  private publish(kind: 'readings' | 'backlog', samples: readonly { t: number; firebox: number }[]): void {
    const records = samples.flatMap(({ t, firebox }) =>
      this.channels.map((n, place) => ({ n, v: place === 0 ? firebox : 20 + place * 10 + (this.seq % 5) / 4, t })),
    )
    const seq = ++this.seq
    const counts = [
      { n: 'boot', u: 'count', v: 1 },
      { n: 'seq', u: 'count', v: seq },
      { n: 'up', u: 's', v: 7200 + (performance.now() - this.began) / 1000 },
    ]
    const [first, ...rest] = records
    const pack = JSON.stringify([{ bn: `yard/${this.name}/`, bu: 'Cel', ut: 1, ...first }, ...rest, ...counts])
    const at = performance.now()
    this.sent++
    this.client.publish(`firing/1/yard/${this.name}/${kind}`, pack, { qos: 1 }, (error) => {
      if (error) return
      this.acknowledged++
      this.waitsMs.push(performance.now() - at)
    })
  }
}

export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN
}
