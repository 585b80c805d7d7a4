import { readFileSync } from 'node:fs'
import { gunzipSync } from 'node:zlib'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { parsePayload } from '../../../server/domain/senml/payload.ts'
import { endOf, yard } from '../security/stranger.ts'
import type { Yard } from '../security/stranger.ts'

// JSONTestSuite (tests/corpora/json-test-suite): y_ must be read, n_ must not, i_ may be either (RFC 8259).

const packed = gunzipSync(readFileSync('tests/corpora/json-test-suite/parsing.json.gz')).toString()
const cases = Object.entries(JSON.parse(packed) as Record<string, string>).map(([name, text]) => ({
  name,
  bytes: Buffer.from(text, 'base64'),
}))
let live: Yard
let cookie = ''
beforeAll(async () => {
  live = await yard()
  cookie = await live.cookieOf('owner')
})
afterAll(() => live.end())

it(`MQTT: each of ${cases.length} is acknowledged; what is no JSON is refused with a reason and shown`, async () => {
  // stricter than the suite on purpose (wire format, rule 9): a name twice or deep nesting is refused although it is JSON
  const stricter = new Set(['nested', 'duplicate-name', 'unsafe-name'])
  const wrong: string[] = []
  for (const { name, bytes } of cases) {
    const parsed = parsePayload(bytes)
    if (name.startsWith('y_') && !parsed.ok && !stricter.has(parsed.reason)) wrong.push(`${name}: ${parsed.reason}`)
    if (name.startsWith('n_') && parsed.ok) wrong.push(`${name}: read`)
    // larger than the gate lets in: the connection would end, as it should
    if (bytes.length < 60_000) await live.client.publishAsync('firing/1/yard/n1/readings', bytes, { qos: 1 })
  }
  expect(wrong).toEqual([])
  const { text } = await live.ask('GET', '/api/health', { headers: { cookie } })
  expect(text).toContain('version')
})

it(`HTTP: what is JSON and an object or a list is kept, what is none is refused with 400, nothing ends in 500 (${cases.length} cases)`, async () => {
  const wrong: string[] = []
  const headers = { cookie, 'content-type': 'application/json' }
  for (const [index, { name, bytes }] of cases.entries()) {
    const from = `127.0.1.${1 + (index % 200)}`
    const { status } = await live.ask('PUT', '/api/documents/note/suite', { headers, body: bytes, from })
    const isThing = /^\s*[[{]/.test(bytes.toString())
    const fits = name.startsWith('y_') ? [isThing ? 201 : 422] : name.startsWith('n_') ? [400, 422] : [201, 400, 422]
    if (!fits.includes(status)) wrong.push(`${name}: ${status}`)
  }
  expect(wrong).toEqual([])
})

it('live line: none of them is a message of ours, each ends its own connection and no other', async () => {
  const other = live.live({ cookie })
  await new Promise((resolve) => other.once('message', resolve))
  const texts = cases.filter(({ bytes }) => bytes.length < 10_000 && Buffer.from(bytes.toString()).equals(bytes))
  for (let from = 0; from < texts.length; from += 20) {
    const codes = await Promise.all(
      texts.slice(from, from + 20).map(({ bytes }) => {
        const socket = live.live({ cookie })
        socket.on('open', () => socket.send(bytes.toString()))
        return endOf(socket)
      }),
    )
    expect(new Set(codes)).toEqual(new Set([1008]))
  }
  expect(other.readyState).toBe(other.OPEN)
  other.terminate()
})
