import { setTimeout as pause } from 'node:timers/promises'
import { afterEach, beforeEach, expect } from 'vitest'
import type { Broker } from '../../../../server/mqtt/broker.ts'
import type { EmbeddedOptions } from '../../../../server/mqtt/embedded.ts'
import { connect, pingreq, subscribe, told, type Hello } from '../packets.ts'
import { anyTopic, quietBroker } from '../quiet-broker.ts'
import { RawClient } from '../raw-client.ts'

const quietMs = 40
const answerMs = 2000

/** A broker of its own for each test of a file, and raw clients that are hung up afterwards. */
export class Desk {
  broker!: Broker
  #port = 0
  /** What was handed to the store: `topic = payload`. */
  stored: string[] = []
  readonly #cleanups: (() => unknown)[] = []

  /** To be called once at the top of a file. */
  constructor() {
    beforeEach(() => this.open())
    afterEach(async () => {
      for (const cleanup of this.#cleanups.splice(0).reverse()) await cleanup()
    })
  }

  /** The protocol alone: all topics are free, and of the filters all but `closed`. */
  async open(over: Partial<EmbeddedOptions> = {}): Promise<void> {
    this.stored = []
    this.broker = quietBroker({
      onMessage: async ({ topic, payload }) => void this.stored.push(`${topic} = ${Buffer.from(payload).toString()}`),
      limits: { takeoversPerMin: 100 },
      policy: { ...anyTopic, subscribe: (filter) => filter !== 'closed' },
      ...over,
    })
    const { broker } = this
    this.#port = (await broker.start()).port ?? 0
    this.#cleanups.push(() => broker.stop())
  }

  readonly dial = async (): Promise<RawClient> => {
    const client = await RawClient.open(this.#port)
    this.#cleanups.push(() => client.end())
    return client
  }

  readonly come = async (clientId: string, hello: Hello = {}): Promise<RawClient> => {
    const client = await this.dial()
    const [connack] = await ask(client, connect(clientId, hello))
    expect(connack).toMatch(/^connack 0[01] 00$/)
    return client
  }

  readonly listener = async (filter: string, qos = 1, clientId = 'listener'): Promise<RawClient> => {
    const client = await this.come(clientId)
    expect(await ask(client, subscribe(1, [filter, qos]))).toEqual([`suback #1 0${qos}`])
    return client
  }

  /** Hangs up, and waits until the broker has seen it. */
  readonly leave = async (client: RawClient, clientId: string): Promise<void> => {
    client.end()
    await expect.poll(() => this.broker.clients()).not.toContain(clientId)
  }

  readonly say = (topic: string, payload: string, qos: 0 | 1 = 1, retain = false): Promise<void> =>
    this.broker.publish({ topic, payload, qos, retain })

  /** What is said before the connection is closed, which it must be. */
  readonly refusal = async (bytes: Uint8Array, hello: Buffer | null = connect('n1')): Promise<string[]> => {
    const client = await this.dial()
    if (hello !== null) await ask(client, hello)
    const heard = await ask(client, bytes)
    expect(await client.closedWithin(answerMs)).toBe(true)
    return heard
  }
}

/** Sends, and tells the next packets that come back. */
export async function ask(client: RawClient, bytes: Uint8Array, answers = 1): Promise<string[]> {
  client.send(bytes)
  return next(client, answers)
}

export async function next(client: RawClient, count: number): Promise<string[]> {
  const heard: string[] = []
  while (heard.length < count) heard.push(told(await client.packet(answerMs)))
  return heard
}

/** All that has come: two pings apart by a moment, because what is handed on waits for its turn and an answer does not. */
export async function rest(client: RawClient): Promise<string[]> {
  const heard: string[] = []
  for (let pings = 0; pings < 2; pings++) {
    if (pings > 0) await pause(quietMs)
    client.send(pingreq)
    for (let line = ''; line !== 'pingresp' && line !== 'nothing'; heard.push(line)) line = told(await client.packet(answerMs))
  }
  return heard.filter((line) => line !== 'pingresp')
}

/** Without the numbers of messages, which are the server's own choice. */
export const bare = (lines: string[]): string[] => lines.map((line) => line.replace(/^publish(.*?) #\d+ /, 'publish$1 '))
