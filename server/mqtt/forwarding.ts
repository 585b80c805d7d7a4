import type { Aedes, Client, PublishPacket, Subscription } from 'aedes'

type Qos = 0 | 1 | 2
interface Kept {
  cmd: string
  dup?: boolean
  qos?: Qos
  messageId?: number
}
interface Persistence {
  outgoingStream(client: Client): AsyncIterable<Kept>
  outgoingUpdate(client: Client, packet: Kept): Promise<void>
  outgoingClearMessageId(client: Client, packet: Kept): Promise<Kept | undefined>
  outgoingEnqueueCombi(subscriptions: { clientId: string }[], packet: unknown): Promise<unknown>
}

/**
 * What the broker behind leaves undone of MQTT 3.1.1 when it hands a message on: it sends with the QoS of whichever filter matched first, or
 * of none for a retained message (3.3.5-1, 3.8.4-6), it does not mark what it sends again (3.3.1-1), and where two filters of a lasting
 * session match, it keeps the message twice, loses it at the second, and then closes the connection because it is not there.
 */
export class Forwarding {
  readonly #asked = new WeakMap<Client, Map<string, Qos>>()

  /** To be called once the broker behind listens. */
  attach(aedes: Aedes): void {
    const { persistence } = aedes as unknown as { persistence: Persistence }
    const stream = persistence.outgoingStream.bind(persistence)
    persistence.outgoingStream = (client) => {
      const packets = stream(client)
      return marked(packets)
    }
    const update = persistence.outgoingUpdate.bind(persistence)
    // what goes out with QoS 0 was never kept
    persistence.outgoingUpdate = async (client, packet) =>
      packet.cmd === 'publish' && packet.qos === 0 ? undefined : update(client, packet)
    // the second filter that matches asks to forget a message that was given no number yet: it would be the one on its way
    const clear = persistence.outgoingClearMessageId.bind(persistence)
    persistence.outgoingClearMessageId = async (client, packet) => (packet.messageId === undefined ? undefined : clear(client, packet))
    const enqueue = persistence.outgoingEnqueueCombi.bind(persistence)
    persistence.outgoingEnqueueCombi = (subscriptions, packet) => {
      const once = new Map(subscriptions.map((subscription) => [subscription.clientId, subscription]))
      return enqueue([...once.values()], packet)
    }
  }

  /** @returns the subscription as the broker behind must have it: able to carry the greatest QoS. The client is told what it asked for. */
  granted(client: Client, subscription: Subscription): Subscription {
    const asked = this.#asked.get(client) ?? new Map<string, Qos>()
    asked.set(subscription.topic, subscription.qos)
    this.#asked.set(client, asked)
    return { ...subscription, qos: 2 }
  }

  /** Brings the message down to the greatest QoS that the client asked for with a filter that matches. */
  lower(client: Client, packet: PublishPacket): void {
    const asked = this.#asked.get(client)
    if (packet.qos === 0 || asked === undefined) return
    const { subscriptions } = client as unknown as { subscriptions: Record<string, unknown> }
    let greatest: Qos | null = null
    for (const filter in subscriptions) {
      const qos = asked.get(filter) ?? 0
      if ((greatest === null || qos > greatest) && filterMatches(filter, packet.topic)) greatest = qos
    }
    if (greatest !== null && greatest < packet.qos) packet.qos = greatest
  }
}

/** A packet that has its number already was sent before, over a connection that is gone. */
async function* marked(packets: AsyncIterable<Kept>): AsyncGenerator<Kept> {
  for await (const packet of packets) {
    if (packet.cmd === 'publish' && packet.messageId !== undefined) packet.dup = true
    yield packet
  }
}

/** MQTT 3.1.1, 4.7. */
export function filterMatches(filter: string, topic: string): boolean {
  const levels = filter.split('/')
  const parts = topic.split('/')
  if (topic.startsWith('$') && (levels[0] === '#' || levels[0] === '+')) return false
  for (const [index, level] of levels.entries()) {
    if (level === '#') return true
    if (index >= parts.length || (level !== '+' && level !== parts[index])) return false
  }
  return levels.length === parts.length
}
