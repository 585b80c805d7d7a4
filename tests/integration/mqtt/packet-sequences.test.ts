import { readdirSync, readFileSync } from 'node:fs'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { anyTopic, quietBroker } from './quiet-broker.ts'
import { connectPacket, RawClient } from './raw-client.ts'

// Source of the expectations: Eclipse Mosquitto's test data, see tests/corpora/mqtt-packet-sequences/SOURCE.md.

/**
 * Deviations: a CONNECT of MQTT 3.1 with the QoS bits of its first byte set. They are unused in 3.1 and reserved since 3.1.1; the gate
 * refuses a connection on its first byte, before it knows the version, and no client is known that sets them.
 */
const deviations = { 'CONNECT.json / v3.1   CONNECT / 1 14 ok ': 'nothing instead of 20 02 00 00' }

interface Step {
  type: 'send' | 'recv' | 'publish'
  payload: string
  topic?: string
  qos?: 0 | 1
}
interface Sequence {
  name: string
  ver?: number
  connect?: boolean
  expect_disconnect?: boolean
  msgs: Step[]
}

const folder = new URL('../../corpora/mqtt-packet-sequences/', import.meta.url)
const quietMs = 60
const answerMs = 1000

const sequences = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .flatMap((file) => {
    const groups = JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as { group: string; tests: Sequence[] }[]
    return groups.flatMap(({ group, tests }) =>
      tests.map((test, index) => ({ key: `${file} / ${group} / ${index} ${test.name}`, ...test })),
    )
  })

const bytesOf = (hex: string) => Buffer.from(hex.replaceAll(' ', ''), 'hex')

/** Some sequences carry a CONNECT of version 5 but not the mark. */
function isForOldVersions({ ver = 4, msgs }: Sequence): boolean {
  const first = msgs[0]?.type === 'send' ? bytesOf(msgs[0].payload) : Buffer.alloc(0)
  const name = Buffer.from('00044d51545405', 'hex')
  return ver < 5 && !(first[0] === 0x10 && first.includes(name))
}

// topics of the sequences are not of our contract
const broker = quietBroker({ limits: { takeoversPerMin: 100_000 }, policy: anyTopic })
let port = 0
beforeAll(async () => {
  port = (await broker.start()).port ?? 0
})
afterAll(() => broker.stop())

/** The packet id of what a broker sends is its own choice. */
function masked(packet: Buffer): string {
  const copy = Buffer.from(packet)
  const type = (copy[0] ?? 0) >> 4
  if (type === 3 && ((copy[0] ?? 0) & 6) !== 0) copy.fill(0, 4 + copy.readUInt16BE(2), 6 + copy.readUInt16BE(2))
  return copy.toString('hex')
}

/** @returns what went otherwise, or null */
async function play(sequence: Sequence): Promise<string | null> {
  const client = await RawClient.open(port)
  try {
    if (sequence.connect !== false) {
      client.send(connectPacket(''))
      if ((await client.packet(answerMs)) === null) return 'no CONNACK'
    }
    let ownId = Buffer.from([0, 1])
    for (const step of sequence.msgs) {
      if (step.type === 'publish') {
        await broker.publish({ topic: step.topic ?? '', payload: step.payload, qos: (step.qos ?? 0) as 0 | 1, retain: false })
      } else if (step.type === 'send') {
        const bytes = bytesOf(step.payload)
        const answers = [4, 5, 7].includes((bytes[0] ?? 0) >> 4) && bytes.length === 4 && bytes.readUInt16BE(2) === 1
        client.send(answers ? Buffer.concat([bytes.subarray(0, 2), ownId]) : bytes)
      } else {
        const got = await client.packet(answerMs)
        if (got === null) return `nothing instead of ${step.payload}`
        const type = (got[0] ?? 0) >> 4
        if (type === 3 && ((got[0] ?? 0) & 6) !== 0) ownId = Buffer.from(got.subarray(4 + got.readUInt16BE(2), 6 + got.readUInt16BE(2)))
        const expected = bytesOf(step.payload)
        const pubrel = type === 6 && got.length === 4 && got.subarray(2).equals(ownId)
        if (!pubrel && masked(got) !== masked(expected)) return `${got.toString('hex')} instead of ${expected.toString('hex')}`
      }
    }
    if (sequence.expect_disconnect === false) {
      if (await client.closedWithin(quietMs)) return 'closed'
      client.send(Buffer.from([0xc0, 0]))
      const last = await client.packet(answerMs)
      return last === null ? 'closed at the next packet' : null
    }
    return (await client.closedWithin(answerMs)) ? null : 'left open'
  } finally {
    client.end()
  }
}

it('answers the sequences for MQTT 3.1 and 3.1.1 as they expect, but for those explained', async () => {
  const old = sequences.filter(isForOldVersions)
  const otherwise: Record<string, string> = {}
  for (const sequence of old) {
    const result = await play(sequence)
    if (result !== null) otherwise[sequence.key] = result
  }
  console.info(`packet sequences 3.1 and 3.1.1: ${old.length - Object.keys(otherwise).length} of ${old.length} as expected`)
  expect(old.length).toBe(273)
  expect(otherwise).toEqual(deviations)
})

it('stays alive through the sequences of MQTT 5 and serves the next good client', async () => {
  const rest = sequences.filter((sequence) => !isForOldVersions(sequence))
  for (const sequence of rest) {
    const client = await RawClient.open(port)
    for (const step of sequence.msgs) if (step.type === 'send') client.send(bytesOf(step.payload))
    const good = await RawClient.open(port)
    good.send(connectPacket(''))
    expect((await good.packet(answerMs))?.toString('hex'), sequence.key).toBe('20020000')
    good.end()
    client.end()
  }
  expect(rest.length).toBe(1483 - 273)
})
