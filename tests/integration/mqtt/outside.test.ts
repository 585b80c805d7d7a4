import { createServer, type AddressInfo, type Server } from 'node:net'
import { Aedes, type Client } from 'aedes'
import { connectAsync } from 'mqtt'
import { afterEach, expect, it } from 'vitest'
import type { Incoming, Said } from '../../../server/mqtt/broker.ts'
import { createOutsideBroker } from '../../../server/mqtt/outside.ts'

// Another's broker is played by the plain broker library without our gate and hooks.

const cleanups: (() => unknown)[] = []
afterEach(async () => {
  for (const cleanup of cleanups.splice(0).reverse()) await cleanup()
})

interface Other {
  aedes: Aedes
  port: number
  stop(): Promise<void>
}

async function otherBroker(port = 0): Promise<Other> {
  const aedes = await Aedes.createBroker()
  const server: Server = createServer(aedes.handle)
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve))
  const stop = async () => {
    const closed = new Promise((resolve) => server.close(resolve))
    await new Promise<void>((resolve) => aedes.close(resolve))
    await closed
  }
  cleanups.push(() => stop().catch(() => {}))
  return { aedes, port: (server.address() as AddressInfo).port, stop }
}

const will: Said = { topic: 'firing/1/yard/server/state', payload: '{"s":"offline"}', qos: 1, retain: true }
const alert: Said = { topic: 'firing/1/yard/server/alert', payload: '{"level":"urgent"}', qos: 1, retain: true }

async function service(port: number, onMessage: (message: Incoming) => Promise<void>, retained: Said[] = []) {
  const broker = createOutsideBroker({
    url: `mqtt://127.0.0.1:${port}`,
    root: 'firing',
    site: 'yard',
    clientId: 'service',
    will,
    log: { info: () => {}, warn: () => {} },
    chance: () => 0,
    onMessage,
  })
  await broker.start(retained)
  cleanups.push(() => broker.stop())
  return broker
}

async function node(port: number) {
  const client = await connectAsync(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 0 })
  cleanups.push(() => client.endAsync(true))
  return client
}

/** Until the service has subscribed. */
const subscribed = ({ aedes }: Other) => new Promise<void>((resolve) => aedes.once('subscribe', () => resolve()))

it('names a topic that the subscription brought and nobody can use; what others say to their own programs never fills the list', async () => {
  const other = await otherBroker()
  const came: string[] = []
  const ready = subscribed(other)
  const broker = await service(other.port, async ({ topic }) => void came.push(topic))
  await ready
  const sender = await node(other.port)
  for (let n = 0; n < 30; n++) await sender.publishAsync(`house/lamp-${String(n)}`, 'on', { qos: 1 })
  await sender.publishAsync('firing/1/yard/N_1/readings', '{}', { qos: 1 })
  await sender.publishAsync('firing/1/yard/n1/readings', '{}', { qos: 1 })
  await expect.poll(() => came).toEqual(['firing/1/yard/N_1/readings', 'firing/1/yard/n1/readings'])
  expect(broker.turnedAway()).toEqual({
    reasons: {},
    topics: [{ topic: 'firing/1/yard/N_1/readings', reason: 'bad-node-name', times: 1 }],
    pushedOut: 0,
  })
})

it('acknowledges to the broker only what is stored', async () => {
  const other = await otherBroker()
  const ready = subscribed(other)
  const acknowledged: string[] = []
  other.aedes.on('ack', (_packet, client: Client) => acknowledged.push(client.id))
  let stored = () => {}
  const messages: Incoming[] = []
  await service(other.port, (message) => {
    messages.push(message)
    return new Promise<void>((resolve) => (stored = resolve))
  })
  await ready
  await (await node(other.port)).publishAsync('firing/1/yard/n1/readings', '{"outlet":30}', { qos: 1 })
  await expect.poll(() => messages.length).toBe(1)
  await new Promise((resolve) => setTimeout(resolve, 100))
  expect(acknowledged).toEqual([])
  stored()
  await expect.poll(() => acknowledged).toEqual(['service'])
  expect(messages[0]).toMatchObject({ topic: 'firing/1/yard/n1/readings', qos: 1, retained: false })
})

it('asks again for what it could not store', async () => {
  const other = await otherBroker()
  const ready = subscribed(other)
  const seen: string[] = []
  await service(other.port, async ({ payload }) => {
    seen.push(Buffer.from(payload).toString())
    if (seen.length === 1) throw new Error('disk full')
  })
  await ready
  await (await node(other.port)).publishAsync('firing/1/yard/n1/readings', 'once', { qos: 1 })
  await expect.poll(() => seen).toEqual(['once', 'once'])
})

it('marks what the broker plays from its store, and does not hear itself', async () => {
  const other = await otherBroker()
  const sender = await node(other.port)
  await sender.publishAsync('firing/1/yard/n1/state', '{"s":"ready"}', { qos: 1, retain: true })
  const messages: Incoming[] = []
  await service(other.port, async (message) => void messages.push(message), [alert])
  await expect.poll(() => messages.map(({ topic, retained }) => [topic, retained])).toEqual([['firing/1/yard/n1/state', true]])
  await sender.publishAsync('firing/1/yard/server/state', '{"s":"online"}', { qos: 1 })
  await sender.publishAsync('firing/1/yard/n1/state', '{"s":"sleeping"}', { qos: 1, retain: true })
  await expect.poll(() => messages.length).toBe(2)
  expect(messages[1]).toMatchObject({ topic: 'firing/1/yard/n1/state', retained: false })
})

it('comes back to a broker that was down and has forgotten all, subscribes, and says again what stands', async () => {
  const first = await otherBroker()
  const ready = subscribed(first)
  const messages: Incoming[] = []
  const broker = await service(first.port, async (message) => void messages.push(message))
  await ready
  await broker.publish(alert)
  await first.stop()
  const newer = { ...alert, payload: '{"level":"none"}' }
  await broker.publish(newer)
  const second = await otherBroker(first.port)
  await subscribed(second)
  const listener = await node(second.port)
  const heard: string[] = []
  listener.on('message', (_topic, payload) => heard.push(payload.toString()))
  await listener.subscribeAsync(alert.topic, { qos: 1 })
  await expect.poll(() => heard).toEqual([newer.payload])
  await listener.publishAsync('firing/1/yard/n1/readings', '{}', { qos: 1 })
  await expect.poll(() => messages.length).toBe(1)
})

it('leaves its will with the broker', async () => {
  const other = await otherBroker()
  const ready = subscribed(other)
  await service(other.port, async () => {})
  await ready
  const listener = await node(other.port)
  const heard: string[] = []
  listener.on('message', (_topic, payload) => heard.push(payload.toString()))
  await listener.subscribeAsync(will.topic, { qos: 1 })
  const { clients } = other.aedes as unknown as { clients: Record<string, Client> }
  clients['service']?.conn.destroy()
  await expect.poll(() => heard).toEqual([will.payload])
})
