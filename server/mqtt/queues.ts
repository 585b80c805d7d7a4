import type { Aedes } from 'aedes'

interface Persistence {
  outgoingEnqueueCombi(subscriptions: { clientId: string }[], packet: unknown): Promise<unknown>
}

/**
 * Keeps what waits for absent clients short: without this a buzzer that was put away fills the memory (reliability 5, class 23).
 * The oldest stay; what stands is retained and told on the next connection anyway.
 */
export function limitQueues(aedes: Aedes, most: number): void {
  const { persistence, clients } = aedes as unknown as { persistence: Persistence; clients: Record<string, unknown> }
  const waiting = new Map<string, number>()
  const enqueue = persistence.outgoingEnqueueCombi.bind(persistence)
  aedes.on('clientReady', (client) => waiting.delete(client.id))
  persistence.outgoingEnqueueCombi = (subscriptions, packet) => {
    const kept = subscriptions.filter(({ clientId }) => {
      if (clients[clientId] !== undefined) return true
      const count = (waiting.get(clientId) ?? 0) + 1
      waiting.set(clientId, count)
      return count <= most
    })
    return enqueue(kept, packet)
  }
}
