import { setTimeout as pause } from 'node:timers/promises'
import { connectAsync, type IClientOptions, type MqttClient } from 'mqtt'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Broker } from '../../../server/mqtt/broker.ts'
import { createBroker } from '../../../server/mqtt/embedded.ts'
import type { GateLimits } from '../../../server/mqtt/gate/limits.ts'
import { connectPacket, RawClient } from './raw-client.ts'

// What a broker of MQTT 3.1.1 must do (OASIS Standard, 29 October 2014); numbers of its statements in brackets. The gate's own part is in
// tests/unit/mqtt/gate/gate.test.ts, byte by byte in packet-sequences.test.ts.

let broker: Broker
let port = 0
const cleanups: (() => unknown)[] = []
async function open(limits: Partial<GateLimits> = {}): Promise<void> {
  broker = createBroker({
    host: '127.0.0.1',
    port: 0,
    root: 'firing',
    site: 'yard',
    log: { info: () => {}, warn: () => {} },
    onMessage: async () => {},
    limits: { takeoversPerMin: 100, ...limits },
    // the protocol alone: all topics but one are free
    policy: {
      publish: (_topic, node) => ({ verdict: 'take', reason: '', node, share: true }),
      subscribe: (filter) => filter !== 'nosubscribe',
    },
  })
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
  qos: number
  retain: boolean
  dup: boolean
}
async function client(options: IClientOptions = {}): Promise<{ mqtt: MqttClient; heard: Heard[] }> {
  const heard: Heard[] = []
  const mqtt = await connectAsync(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 0, ...options })
  mqtt.on('message', (topic, payload, { qos, retain, dup }) => heard.push({ topic, text: payload.toString(), qos, retain, dup }))
  cleanups.push(() => mqtt.endAsync(true))
  return { mqtt, heard }
}
const texts = (heard: Heard[]) => heard.map((each) => each.text)

describe('messages', () => {
  it.each([0, 1, 2] as const)('of QoS %i arrive once, with the lesser of both QoS [3.8.4-6, 4.3]', async (qos) => {
    const { mqtt, heard } = await client()
    await mqtt.subscribeAsync('a/b', { qos: 2 })
    await mqtt.publishAsync('a/b', 'x', { qos })
    await pause(100)
    expect(heard).toEqual([{ topic: 'a/b', text: 'x', qos, retain: false, dup: false }])
  })

  it('come in order [4.6.0-1 to -4]', async () => {
    const { mqtt, heard } = await client()
    await mqtt.subscribeAsync('a', { qos: 1 })
    const sent = Array.from({ length: 300 }, (_, n) => String(n))
    await Promise.all(sent.map((text) => mqtt.publishAsync('a', text, { qos: 1 })))
    await expect.poll(() => heard.length).toBe(300)
    expect(texts(heard)).toEqual(sent)
  })

  it('that are retained come to those who subscribe later, marked, and an empty one erases [3.3.1-5 to -11]', async () => {
    const first = await client()
    await first.mqtt.subscribeAsync('r/#', { qos: 1 })
    await first.mqtt.publishAsync('r/a', 'old', { qos: 1, retain: true })
    await first.mqtt.publishAsync('r/a', 'new', { qos: 1, retain: true })
    await first.mqtt.publishAsync('r/b', 'b', { qos: 1, retain: true })
    await first.mqtt.publishAsync('r/b', '', { qos: 1, retain: true })
    const second = await client()
    await second.mqtt.subscribeAsync('r/#', { qos: 1 })
    await expect.poll(() => second.heard.map(({ text, retain }) => [text, retain])).toEqual([['new', true]])
    expect(first.heard.map(({ text, retain }) => [text, retain])).toEqual([
      ['old', false],
      ['new', false],
      ['b', false],
      ['', false],
    ])
  })
})

describe('sessions', () => {
  it('that last keep what came meanwhile; clean ones do not [3.1.2-4 to -6]', async () => {
    const sender = await client()
    for (const clean of [false, true]) {
      const first = await client({ clientId: `away-${clean}`, clean })
      await first.mqtt.subscribeAsync('away', { qos: 1 })
      await first.mqtt.endAsync()
      await sender.mqtt.publishAsync('away', 'meanwhile', { qos: 1 })
      const heard: string[] = []
      const again = await client({ clientId: `away-${clean}`, clean: false })
      again.mqtt.on('message', (_topic, payload) => heard.push(payload.toString()))
      await expect.poll(() => texts(again.heard).concat(heard).includes('meanwhile') || clean).toBe(true)
      if (clean) expect(texts(again.heard)).toEqual([])
    }
  })

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

  it('resend what was not acknowledged [4.4.0-1]', async () => {
    const node = await RawClient.open(port)
    cleanups.push(() => node.end())
    const lasting = connectPacket('lasting')
    lasting[9] = 0
    node.send(lasting)
    await node.packet(1000)
    node.send(Buffer.from('82060001000170 01'.replaceAll(' ', ''), 'hex'))
    await node.packet(1000)
    await broker.publish({ topic: 'p', payload: 'x', qos: 1, retain: false })
    const sent = await node.packet(1000)
    node.end()
    const again = await RawClient.open(port)
    cleanups.push(() => again.end())
    again.send(lasting)
    expect((await again.packet(1000))?.toString('hex')).toBe('20020100')
    const resent = await again.packet(1000)
    expect(resent?.subarray(1).toString('hex')).toBe(sent?.subarray(1).toString('hex'))
  })

  it('of one name exclude each other: the older connection is closed [3.1.4-2]', async () => {
    const first = await RawClient.open(port)
    first.send(connectPacket('same'))
    await first.packet(1000)
    const second = await RawClient.open(port)
    cleanups.push(() => second.end())
    second.send(connectPacket('same'))
    expect((await second.packet(1000))?.toString('hex')).toBe('20020000')
    expect(await first.closedWithin(1000)).toBe(true)
  })

  it('end when nothing is heard for one and a half times the keep-alive [3.1.2-24]', async () => {
    const node = await RawClient.open(port)
    node.send(connectPacket('quiet', 1))
    await node.packet(1000)
    expect(await node.closedWithin(900)).toBe(false)
    expect(await node.closedWithin(5000)).toBe(true)
  })
})

describe('wills', () => {
  it('are published when the connection breaks, not after a DISCONNECT [3.1.2-8, 3.14.4-3]', async () => {
    const listener = await client()
    await listener.mqtt.subscribeAsync('will/#', { qos: 1 })
    for (const [name, polite] of [
      ['a', true],
      ['b', false],
    ] as const) {
      const { mqtt } = await client({ will: { topic: `will/${name}`, payload: Buffer.from('lost'), qos: 1, retain: false } })
      if (polite) await mqtt.endAsync()
      else mqtt.stream.destroy()
    }
    await expect.poll(() => listener.heard.map((each) => each.topic)).toEqual(['will/b'])
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

  it('that overlap bring a message once for each or once with the greatest QoS [3.3.5-1]', async () => {
    const { mqtt, heard } = await client()
    await mqtt.subscribeAsync({ 'o/#': { qos: 1 }, 'o/a': { qos: 0 } })
    await broker.publish({ topic: 'o/a', payload: 'x', qos: 1, retain: false })
    await pause(60)
    expect([1, 2]).toContain(heard.length)
  })

  it('may be refused, which SUBACK says [3.9.3-2]', async () => {
    const { mqtt } = await client()
    await expect(mqtt.subscribeAsync('nosubscribe', { qos: 1 })).rejects.toThrow(/Unspecified error|Subscribe/i)
  })

  it('are given up by UNSUBSCRIBE [3.10.4-1, -4]', async () => {
    const { mqtt, heard } = await client()
    await mqtt.subscribeAsync('a', { qos: 1 })
    await mqtt.unsubscribeAsync('a')
    await mqtt.publishAsync('a', 'x', { qos: 1 })
    expect(heard).toEqual([])
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
