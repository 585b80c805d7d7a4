import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { openDatabase } from '../../../server/storage/sqlite/engine.ts'
import { getJson, post } from '../../support/driven-app.ts'
import { connect, told } from '../mqtt/packets.ts'
import { RawClient } from '../mqtt/raw-client.ts'
import { yard } from '../security/stranger.ts'
import type { Yard } from '../security/stranger.ts'

// The list of naughty strings (tests/corpora/naughty-strings) through eight fields where somebody may write: each is kept letter by letter, or
// refused with a reason because it is too long or empty. Two of them are looked at in a browser: S29 in ../security/box.test.ts.

const all = JSON.parse(readFileSync('tests/corpora/naughty-strings/blns.json', 'utf8')) as string[]
/** `npm run bad-input` takes all of them, `npm test` every thirteenth. */
const step = Number(process.env['NAUGHTY_STEP'] ?? 13)
const naughty = all.filter((_, index) => index % step === 0)
/** As the bounds of the fields are counted. */
const lengthOf = (text: string) => [...text].length
let live: Yard
const rows = (file: string): string => {
  const database = openDatabase(join(live.folder, file), 'read')
  const found = database.prepare('SELECT name, sql FROM sqlite_schema ORDER BY name').all()
  database.close()
  return createHash('sha256').update(JSON.stringify(found)).digest('hex')
}
let schema = ''
let firing = ''
const later = () => live.clock.moveTo(live.clock.now() + 2000)
const keys = Object.getOwnPropertyNames(Object.prototype)
beforeAll(async () => {
  live = await yard()
  await post(`${live.url}/api/acts`, { id: 'light', kiln: 'kiln-1', act: { action: 'light' } })
  later()
  const shelved = async () => (await getJson<{ id: string }[]>(`${live.url}/api/firings`))[0]?.id ?? ''
  await vi.waitUntil(async () => (await shelved()) !== '', { timeout: 30_000 })
  firing = await shelved()
  schema = rows('kiln.db')
})
afterAll(async () => {
  // what all of them together must not do
  expect(rows('kiln.db')).toBe(schema)
  expect(Object.getOwnPropertyNames(Object.prototype)).toEqual(keys)
  expect(live.logged.filter((line) => line.startsWith('a request failed'))).toEqual([])
  expect((await fetch(`${live.url}/api/health`)).status).toBe(200)
  await live.end()
})

/** Sends each, some at once. @returns the answers in order */
async function each<T>(send: (text: string, index: number) => Promise<T>, atOnce = 40): Promise<T[]> {
  const answers: T[] = []
  for (let from = 0; from < naughty.length; from += atOnce) {
    answers.push(...(await Promise.all(naughty.slice(from, from + atOnce).map((text, index) => send(text, from + index)))))
  }
  return answers
}
const statusOf = async (answer: Promise<Response>) => (await answer).status
const fits = (least: number, most: number, fine: number) =>
  naughty.map((text) => (lengthOf(text) >= least && lengthOf(text) <= most ? fine : 422))
const kept = (least: number, most: number) => naughty.filter((text) => lengthOf(text) >= least && lengthOf(text) <= most)

describe(`${naughty.length} naughty strings`, () => {
  it('field 1: the text of a note at the kiln', async () => {
    const sent = each((text, index) =>
      statusOf(post(`${live.url}/api/acts`, { id: `n${index}`, kiln: 'kiln-1', act: { action: 'note', text } })),
    )
    expect(await sent).toEqual(fits(0, 4000, 200))
    const { acts } = await getJson<{ acts: { id: string; act: { text?: string } }[] }>(`${live.url}/api/firings/${firing}`)
    const texts = new Map(acts.map(({ id, act }) => [id, act.text]))
    expect(naughty.map((_, index) => texts.get(`n${index}`))).toEqual(naughty)
  })

  it('field 2: names and values of a document', async () => {
    const put = each((text, index) => statusOf(post(`${live.url}/api/documents/note/n${index}`, { text, [`_${text}`]: text }, 'PUT')))
    expect(new Set(await put)).toEqual(new Set([201]))
    const documents = await getJson<{ id: string; document: Record<string, string> }[]>(`${live.url}/api/documents/note`)
    const found = new Map(documents.map(({ id, document }) => [id, document]))
    for (const [index, text] of naughty.entries()) expect(found.get(`n${index}`)).toEqual({ text, [`_${text}`]: text })
  })

  it('field 3: the title of a firing', async () => {
    for (const text of naughty) {
      const answer = await post(`${live.url}/api/firings/${firing}/title`, { title: text }, 'PUT')
      expect(answer.status, text).toBe(lengthOf(text) > 200 ? 422 : 200)
      if (lengthOf(text) <= 200) expect(((await answer.json()) as { title: string }).title).toBe(text)
    }
    // as it comes out of the store again
    const [shown] = await getJson<{ title: string }[]>(`${live.url}/api/firings`)
    expect(shown?.title).toBe(kept(0, 200).at(-1))
  })

  it('fields 4 and 5: the name of a lot and the wood that it came from', async () => {
    const entry = (lot: string, wood: string, id: string) =>
      post(`${live.url}/api/lots/entries`, { id, event: { what: 'charcoal', lot, firing: null, massG: 1000, finesG: 0, wood } })
    // one after the other: two of one name at once would be two answers
    const seen = new Set<string>()
    for (const [index, text] of naughty.entries()) {
      const { status } = await entry(text, 'oak', `lot${index}`)
      const isName = lengthOf(text) > 0 && lengthOf(text) <= 60 && !seen.has(text)
      if (status === 201) seen.add(text)
      // a name of blanks alone is refused by the ledger
      expect([isName && text.trim() !== '' ? 201 : 422, 422], JSON.stringify(text)).toContain(status)
    }
    const woods = await each((text, index) => statusOf(entry(`lot ${index}`, text, `wood${index}`)), 1)
    expect(woods).toEqual(fits(0, 200, 201))
    const { entries } = await getJson<{ entries: { id: string; event: { lot: string; wood: string } }[] }>(`${live.url}/api/lots`)
    const found = new Map(entries.map(({ id, event }) => [id, event]))
    for (const [index, text] of naughty.entries()) {
      if (seen.has(text) && found.has(`lot${index}`)) expect(found.get(`lot${index}`)?.lot).toBe(text)
      if (lengthOf(text) <= 200) expect(found.get(`wood${index}`)?.wood).toBe(text)
    }
    expect(seen.size).toBeGreaterThan(naughty.length / 2)
  })

  it('field 6: the label of a tablet', async () => {
    // pairing is rationed by address, however quick the machine: a few addresses share them
    const labels = await each(async (label, index) => {
      const invited = await post(`${live.url}/api/people/invite`, { person: 'viewer', label })
      if (invited.status !== 201) return invited.status
      const { code } = (await invited.json()) as { code: string }
      return (await live.json('POST', '/api/people/pair', { code }, '', `127.0.0.${1 + (index % 8)}`)).status
    })
    expect(labels).toEqual(fits(0, 60, 200))
    const devices = await getJson<{ label: string }[]>(`${live.url}/api/people`)
    expect(devices.map(({ label }) => label).toSorted()).toEqual(kept(0, 60).toSorted())
  })

  it('field 7: names and payloads of a reading; each is acknowledged, what is no name is refused and shown', async () => {
    const packed = (text: string) => JSON.stringify([{ n: text, u: 'Cel', v: 20 }])
    for (const [index, text] of naughty.entries()) {
      // within one millisecond
      for (const payload of [text, packed(text)]) await live.client.publishAsync('firing/1/yard/n1/readings', payload, { qos: 1 })
      // what is set aside is written with the ticks
      if (index % 20 === 0) later()
    }
    const held = () => getJson<{ payload: string }[]>(`${live.url}/api/quarantine?limit=500`)
    later()
    await expect.poll(async () => (await held()).length).toBeGreaterThan(Math.min(400, naughty.length))
    const sent = new Set(naughty.flatMap((text) => [text, packed(text)]))
    for (const { payload } of await held()) expect(sent).toContain(Buffer.from(payload, 'base64').toString())
  })

  it('field 8: client id and user of a connection: let in or refused, and nobody else notices', async () => {
    const answers = new Set<string>()
    for (const text of naughty) {
      const client = await RawClient.open(live.mqttPort ?? 0)
      client.send(connect(text, { user: text, password: 'x' }))
      answers.add(told(await client.packet(5000)))
      client.end()
    }
    for (const answer of answers) expect(['connack 00 00', 'connack 00 02', 'connack 00 05', 'nothing']).toContain(answer)
    await live.publish('readings', { wall: 20 })
  })
})
