import mqtt, { type MqttClient } from 'mqtt'

/** Whose readings are watched; the fourth to sixth node only make load. */
export const watchedRoles = ['firebox', 'wall', 'outlet'] as const
export type WatchedRole = (typeof watchedRoles)[number]

const base: Record<WatchedRole, number> = { firebox: 620, wall: 240, outlet: 31 }
const nodes = 6
const channelsOfANode = 10
const everyMs = 1000

/** Epoch milliseconds, finer than whole ones; the page's script reads the same clock of the same machine. */
export const epochMs = (): number => performance.timeOrigin + performance.now()

/** A value that is on its way, until somebody has seen it. */
export interface Sent {
  role: WatchedRole
  value: number
  at: number
}

/**
 * Six nodes with ten channels each, a pack a second and node, spread over the second: sixty readings a second, QoS 1, over real MQTT. The
 * first channel of three of them is a role; its value changes with every pack by whole degrees, so that the page must change too.
 */
export class Nodes {
  acknowledged = 0
  readonly readings = nodes * channelsOfANode
  private readonly clients: MqttClient[]
  private readonly onSent: (sent: Sent) => void
  private timers: NodeJS.Timeout[] = []
  private seq = 0

  private constructor(clients: MqttClient[], onSent: (sent: Sent) => void) {
    this.clients = clients
    this.onSent = onSent
  }

  static async connect(mqttPort: number, onSent: (sent: Sent) => void): Promise<Nodes> {
    const clients = await Promise.all(
      Array.from({ length: nodes }, (_, n) =>
        mqtt.connectAsync(`mqtt://127.0.0.1:${mqttPort}`, { clientId: `line-${n + 1}`, reconnectPeriod: 0 }),
      ),
    )
    return new Nodes(clients, onSent)
  }

  start(): void {
    this.clients.forEach((client, n) => {
      const begin = () => {
        this.timers.push(setInterval(() => this.send(client, n), everyMs))
      }
      this.timers.push(setTimeout(begin, (n * everyMs) / nodes))
    })
  }

  async stop(): Promise<void> {
    for (const timer of this.timers) clearInterval(timer)
    this.timers = []
    await Promise.all(this.clients.map((client) => client.endAsync(true)))
  }

  private send(client: MqttClient, n: number): void {
    const seq = ++this.seq
    const round = Math.ceil(seq / nodes)
    const role = watchedRoles[n]
    const value = role ? base[role] + (round % 5) : 20 + (round % 50)
    const pack = [
      { bn: `yard/line-${n + 1}/`, bu: 'Cel', ut: 1, n: role ?? 'x0', v: value, t: 0 },
      ...Array.from({ length: channelsOfANode - 1 }, (_, c) => ({ n: `x${c + 1}`, v: 20 + ((round + c) % 50), t: 0 })),
      { n: 'boot', u: 'count', v: 1 },
      { n: 'seq', u: 'count', v: round },
      { n: 'up', u: 's', v: round },
    ]
    const text = JSON.stringify(pack)
    if (role) this.onSent({ role, value, at: epochMs() })
    client.publishAsync(`firing/1/yard/line-${n + 1}/readings`, text, { qos: 1 }).then(
      () => (this.acknowledged += channelsOfANode),
      () => {},
    )
  }
}
