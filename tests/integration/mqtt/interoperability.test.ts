import { setTimeout as pause } from 'node:timers/promises'
import { connectAsync, type IClientOptions, type MqttClient } from 'mqtt'
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Broker } from '../../../server/mqtt/broker.ts'
import { connect, told } from './packets.ts'
import { anyTopic, quietBroker } from './quiet-broker.ts'
import { RawClient } from './raw-client.ts'

// Ten subjects that Eclipse Paho's interoperability tests of MQTT 3.1.1 look at, each written anew here, with a client library that is not ours.

let broker: Broker
let port = 0
const cleanups: (() => unknown)[] = []
beforeEach(async () => {
  broker = quietBroker({ limits: { takeoversPerMin: 100 }, policy: { ...anyTopic, subscribe: (filter) => filter !== 'not/for/you' } })
  port = (await broker.start()).port ?? 0
  cleanups.push(() => broker.stop())
})
afterEach(async () => {
  for (const cleanup of cleanups.splice(0).reverse()) await cleanup()
})

interface Peer {
  mqtt: MqttClient
  /** `topic payload qos`, with `kept` where it was marked as retained. */
  heard: string[]
}
async function peer(options: IClientOptions = {}, filters: Record<string, 0 | 1 | 2> = {}): Promise<Peer> {
  const heard: string[] = []
  const mqtt = await connectAsync(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 0, ...options })
  mqtt.on('message', (topic, payload, { qos, retain }) => void heard.push(`${topic} ${payload.toString()} ${qos}${retain ? ' kept' : ''}`))
  cleanups.push(() => mqtt.endAsync(true))
  for (const [filter, qos] of Object.entries(filters)) await mqtt.subscribeAsync(filter, { qos })
  return { mqtt, heard }
}
const all = [0, 1, 2] as const
const cut = async ({ mqtt }: Peer) => {
  const closed = new Promise<void>((resolve) => mqtt.once('close', () => resolve()))
  mqtt.stream.destroy()
  await closed
}

it('1 basic: connect, subscribe, three QoS, unsubscribe, leave, come again', async () => {
  const one = await peer({ clientId: 'one' }, { 'topic/a': 2 })
  for (const qos of all) await one.mqtt.publishAsync('topic/a', `qos${qos}`, { qos })
  await expect.poll(() => one.heard.length).toBe(3)
  expect(one.heard.toSorted()).toEqual(['topic/a qos0 0', 'topic/a qos1 1', 'topic/a qos2 2'])
  await one.mqtt.unsubscribeAsync('topic/a')
  await one.mqtt.publishAsync('topic/a', 'unheard', { qos: 1 })
  await one.mqtt.endAsync()
  const again = await peer({ clientId: 'one' }, { 'topic/a': 0 })
  await again.mqtt.publishAsync('topic/a', 'again', { qos: 0 })
  await expect.poll(() => again.heard).toEqual(['topic/a again 0'])
  expect(one.heard).toHaveLength(3)
})

it('2 retained messages: kept for each QoS, found through a wildcard, erased by empty ones', async () => {
  const sender = await peer()
  for (const qos of all) await sender.mqtt.publishAsync(`keep/${qos}`, 'x', { qos, retain: true })
  const later = await peer({}, { 'keep/+': 2 })
  await expect.poll(() => later.heard.toSorted()).toEqual(all.map((qos) => `keep/${qos} x ${qos} kept`))
  for (const qos of all) await sender.mqtt.publishAsync(`keep/${qos}`, '', { qos, retain: true })
  const last = await peer({}, { 'keep/+': 2 })
  await pause(100)
  expect(last.heard).toEqual([])
})

it('3 zero-length client id: welcome in a clean session, refused with code 2 in a lasting one', async () => {
  await peer({ clientId: '', clean: true })
  // the library would not send the other
  const raw = await RawClient.open(port)
  cleanups.push(() => raw.end())
  raw.send(connect('', { clean: false }))
  expect(told(await raw.packet(2000))).toBe('connack 00 02')
  expect(await raw.closedWithin(2000)).toBe(true)
})

it('4 offline queueing: what came with QoS 1 and 2 meanwhile is there on return', async () => {
  const away = await peer({ clientId: 'away', clean: false }, { 'post/+': 2 })
  await away.mqtt.endAsync()
  const sender = await peer()
  for (const qos of all) await sender.mqtt.publishAsync(`post/${qos}`, 'x', { qos })
  const heard: string[] = []
  const back = await connectAsync(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 0, clientId: 'away', clean: false }, false)
  back.on('message', (topic) => void heard.push(topic))
  cleanups.push(() => back.endAsync(true))
  await expect.poll(() => heard.toSorted()).toEqual(['post/1', 'post/2'])
})

it('5 will: told when the client is cut off, kept where that was asked', async () => {
  const hears = await peer({}, { 'will/#': 2 })
  const lost = await peer({ will: { topic: 'will/a', payload: Buffer.from('gone'), qos: 1, retain: true } })
  await cut(lost)
  await expect.poll(() => hears.heard).toEqual(['will/a gone 1'])
  const later = await peer({}, { 'will/#': 0 })
  await expect.poll(() => later.heard).toEqual(['will/a gone 0 kept'])
})

it('6 overlapping subscriptions: once with the greatest QoS', async () => {
  const one = await peer({}, { 'over/#': 2, 'over/a': 1 })
  await one.mqtt.publishAsync('over/a', 'x', { qos: 2 })
  await expect.poll(() => one.heard.length).toBeGreaterThan(0)
  await pause(50)
  expect(one.heard).toEqual(['over/a x 2'])
})

it('7 keepalive: who falls silent is cut off and its will told', async () => {
  const hears = await peer({ keepalive: 60 }, { 'will/#': 1 })
  const silent = await peer({ keepalive: 1, will: { topic: 'will/s', payload: Buffer.from('silent'), qos: 1, retain: false } })
  // its pings are swallowed
  silent.mqtt.stream.write = () => true
  await expect.poll(() => hears.heard).toEqual(['will/s silent 1'])
})

it('8 redelivery: what was not acknowledged comes again after a new connection', async () => {
  const one = await peer({ clientId: 'again', clean: false }, { 'once/+': 2 })
  // it hears, but its answers do not arrive
  one.mqtt.stream.write = () => true
  const sender = await peer()
  for (const qos of [1, 2] as const) await sender.mqtt.publishAsync(`once/${qos}`, 'x', { qos })
  await expect.poll(() => one.heard).toEqual(['once/1 x 1'])
  await pause(100)
  await cut(one)
  const heard: string[] = []
  const back = await connectAsync(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 0, clientId: 'again', clean: false }, false)
  back.on('message', (topic, _payload, { dup }) => void heard.push(`${topic} ${dup}`))
  cleanups.push(() => back.endAsync(true))
  await expect.poll(() => heard.toSorted()).toEqual(['once/1 true', 'once/2 true'])
})

it('9 a refused subscription says so, and the others of the same packet stand', async () => {
  const one = await peer()
  const error = await one.mqtt.subscribeAsync(['fine', 'not/for/you'], { qos: 1 }).then(
    () => null,
    (problem: Error) => problem,
  )
  expect(error?.message).toMatch(/subscri|unspecified/i)
  await one.mqtt.publishAsync('not/for/you', 'x', { qos: 1 })
  await one.mqtt.publishAsync('fine', 'x', { qos: 1 })
  await expect.poll(() => one.heard).toEqual(['fine x 1'])
})

it('10 topics that begin with $ are not caught by a leading wildcard', async () => {
  const one = await peer({}, { '#': 2, '+/x': 2 })
  await broker.publish({ topic: '$own/x', payload: 'x', qos: 1, retain: false })
  await broker.publish({ topic: 'own/x', payload: 'y', qos: 1, retain: false })
  await expect.poll(() => one.heard.length).toBeGreaterThan(0)
  await pause(50)
  expect(one.heard).toEqual(['own/x y 1'])
})
