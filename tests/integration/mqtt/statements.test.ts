import { setTimeout as pause } from 'node:timers/promises'
import { connectAsync, type IClientOptions, type MqttClient } from 'mqtt'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Broker } from '../../../server/mqtt/broker.ts'
import type { GateLimits } from '../../../server/mqtt/gate/limits.ts'
import { anyTopic, quietBroker } from './quiet-broker.ts'
import { connectPacket, RawClient } from './raw-client.ts'

// What a broker of MQTT 3.1.1 must do (OASIS Standard, 29 October 2014), through a client library, and bounds of our own; numbers of its
// statements in brackets. Byte by byte: conformance/. Which test holds which statement: STATEMENTS.md.

let broker: Broker
let port = 0
const cleanups: (() => unknown)[] = []
async function open(limits: Partial<GateLimits> = {}): Promise<void> {
  broker = quietBroker({ limits: { takeoversPerMin: 100, ...limits }, policy: anyTopic })
  port = (await broker.start()).port ?? 0
  cleanups.push(() => broker.stop())
}
beforeEach(() => open())
afterEach(async () => {
  for (const cleanup of cleanups.splice(0).reverse()) await cleanup()
})

interface Heard {
  topic: string
  text: string
}
async function client(options: IClientOptions = {}): Promise<{ mqtt: MqttClient; heard: Heard[] }> {
  const heard: Heard[] = []
  const mqtt = await connectAsync(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 0, ...options })
  mqtt.on('message', (topic, payload) => heard.push({ topic, text: payload.toString() }))
  cleanups.push(() => mqtt.endAsync(true))
  return { mqtt, heard }
}
const texts = (heard: Heard[]) => heard.map((each) => each.text)

describe('messages', () => {
  it('come in order [4.6.0-1 to -4]', async () => {
    const { mqtt, heard } = await client()
    await mqtt.subscribeAsync('a', { qos: 1 })
    const sent = Array.from({ length: 300 }, (_, n) => String(n))
    await Promise.all(sent.map((text) => mqtt.publishAsync('a', text, { qos: 1 })))
    await expect.poll(() => heard.length).toBe(300)
    expect(texts(heard)).toEqual(sent)
  })
})

describe('sessions', () => {
  it('keep no more than 100 messages for who is away', async () => {
    const first = await client({ clientId: 'buzzer', clean: false })
    await first.mqtt.subscribeAsync('alert', { qos: 1 })
    await first.mqtt.endAsync()
    for (let n = 0; n < 130; n++) await broker.publish({ topic: 'alert', payload: String(n), qos: 1, retain: false })
    const again = await client({ clientId: 'buzzer', clean: false })
    await pause(300)
    expect(again.heard.length).toBeLessThanOrEqual(100)
    await broker.publish({ topic: 'alert', payload: 'now', qos: 1, retain: false })
    await expect.poll(() => texts(again.heard).at(-1)).toBe('now')
  })

  it('end when nothing is heard for one and a half times the keep-alive [3.1.2-24]', async () => {
    const node = await RawClient.open(port)
    node.send(connectPacket('quiet', 1))
    await node.packet(1000)
    expect(await node.closedWithin(900)).toBe(false)
    expect(await node.closedWithin(5000)).toBe(true)
  })
})

describe('filters', () => {
  it.each([
    ['a/+', 'a/b', true],
    ['a/+', 'a/b/c', false],
    ['a/#', 'a', true],
    ['+', '/a', false],
    ['+/+', '/a', true],
    ['#', 'a/b/c', true],
    ['#', '$SYS/x', false],
    ['+/x', '$SYS/x', false],
    ['a/b', 'A/b', false],
  ])('%s and %s: %s [4.7.1, 4.7.2-1, 4.7.3]', async (filter, topic, match) => {
    const { mqtt, heard } = await client()
    await mqtt.subscribeAsync(filter, { qos: 0 })
    await broker.publish({ topic, payload: 'x', qos: 0, retain: false })
    await broker.publish({ topic: 'end', payload: 'x', qos: 0, retain: false })
    await pause(40)
    expect(heard.some((each) => each.topic === topic)).toBe(match)
  })
})

it('keeps the last message of so many topics of nodes and no more', async () => {
  await open({ retained: 3 })
  const { mqtt } = await client()
  for (let n = 0; n < 6; n++) await mqtt.publishAsync(`n${n}/state`, 'x', { qos: 1, retain: true })
  await mqtt.publishAsync('n0/state', 'y', { qos: 1, retain: true })
  const later = await client()
  await later.mqtt.subscribeAsync('#', { qos: 1 })
  await pause(100)
  expect(later.heard.map(({ topic, text }) => [topic, text]).sort()).toEqual([
    ['n0/state', 'y'],
    ['n1/state', 'x'],
    ['n2/state', 'x'],
  ])
})
