import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { People } from '../../../server/http/people.ts'
import { createMemoryStore } from '../../../server/storage/memory.ts'
import { startProgram } from '../../support/program.ts'
import { endOf, yard } from './stranger.ts'
import type { Yard } from './stranger.ts'

// Numbers S1 to S36 are those of the handbook's list of checks (reliability, 6; OWASP ASVS 5.0 and ETSI EN 303 645).
// There are no passwords: a browser is paired by a link that is good once, and keeps 256 random bits. S4 to S7 are held to that.

let live: Yard
beforeAll(async () => {
  live = await yard()
})
afterAll(() => live.end())

const dayMs = 24 * 3_600_000
const invite = async (person = 'operator') =>
  (JSON.parse((await live.json('POST', '/api/people/invite', { person }, await live.cookieOf('owner'))).text) as { code: string }).code

describe('pairing', () => {
  it('S1 a fresh install has no account; its first start prints an invitation that is good once and a quarter of an hour', async () => {
    let now = 0
    const people = new People(createMemoryStore(), () => now)
    expect(people.list()).toEqual([])
    const code = people.invite('owner', '')
    expect(await people.pair(code)).not.toBeNull()
    expect(await people.pair(code)).toBeNull()
    const late = people.invite('owner', '')
    now += 15 * 60_000 + 1
    expect(await people.pair(late)).toBeNull()
    const folder = mkdtempSync(join(tmpdir(), 'fresh-'))
    const program = await startProgram(folder, ['--host', '0.0.0.0'])
    expect(program.out()).not.toMatch(/password/i)
    expect(await (await fetch(`${program.url}/api/people`)).json()).toEqual([])
    program.child.kill('SIGTERM')
    expect(await program.ended).toBe(0)
  })

  it('S4 nobody chooses a secret: each has 128 bits or more from the generator, and no short or common word pairs', async () => {
    const codes = await Promise.all(Array.from({ length: 20 }, () => invite()))
    expect(new Set(codes).size).toBe(20)
    for (const code of codes) expect(Buffer.from(code, 'base64url').length * 8).toBeGreaterThanOrEqual(128)
    for (const word of ['password', '12345678', 'kiln', '', 'x'.repeat(64)]) {
      expect((await live.json('POST', '/api/people/pair', { code: word }, '', '127.0.0.4')).status).toBeGreaterThanOrEqual(400)
    }
  })

  it('S5 only hashes are kept, of secrets that are too long to be tried out', async () => {
    const cookie = await live.cookieOf('operator')
    const secret = cookie.split('=')[1] ?? ''
    expect(Buffer.from(secret, 'base64url').length).toBe(32)
    const kept = JSON.stringify(await live.store.documents('device'))
    expect(kept).not.toContain(secret)
    expect(kept).toMatch(/[0-9a-f]{64}/)
  })

  it('S6 ten wrong codes from one address: it waits, another is not locked out, and all are in the register without the code', async () => {
    const wrong = () => live.json('POST', '/api/people/pair', { code: 'not-this-one-either' }, '', '127.0.0.6')
    for (let i = 0; i < 10; i++) expect((await wrong()).status).toBe(403)
    expect((await wrong()).status).toBe(429)
    const code = await invite()
    expect((await live.json('POST', '/api/people/pair', { code }, '', '127.0.0.7')).status).toBe(200)
    const { lines } = JSON.parse((await live.ask('GET', '/api/register', { headers: { cookie: await live.cookieOf('owner') } })).text) as {
      lines: { what: string; from: string }[]
    }
    expect(lines.filter(({ what, from }) => what === 'pair-refused' && from === '127.0.0.6')).toHaveLength(10)
    expect(JSON.stringify(lines)).not.toContain('not-this-one-either')
  })

  it('S7 an unknown code, a used one and one of another length are answered with the same bytes and the same work', async () => {
    const used = await invite()
    await live.json('POST', '/api/people/pair', { code: used }, '', '127.0.0.8')
    const answers = []
    for (const code of [used, 'A'.repeat(used.length), 'A'.repeat(99)]) {
      const { status, text, headers } = await live.json('POST', '/api/people/pair', { code }, '', '127.0.0.8')
      const { date: _, ...rest } = headers
      answers.push({ status, text, headers: rest })
    }
    expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1)
  })

  it('S8 a secret of 256 bits is new at each pairing, and dead at once when the browser is removed, on the live line too', async () => {
    const owner = await live.cookieOf('owner')
    const cookie = await live.cookieOf('operator')
    expect(await live.cookieOf('operator')).not.toBe(cookie)
    const socket = live.live({ cookie })
    const closed = endOf(socket)
    await new Promise((resolve) => socket.once('message', resolve))
    const devices = JSON.parse((await live.ask('GET', '/api/people', { headers: { cookie: owner } })).text) as {
      id: string
      label: string
    }[]
    for (const { id, label } of devices) {
      if (label === 'operator') expect((await live.ask('DELETE', `/api/people/${id}`, { headers: { cookie: owner } })).status).toBe(204)
    }
    expect((await live.ask('GET', '/api/firings', { headers: { cookie } })).status).toBe(403)
    expect(await closed).toBe(1008)
  })

  it('S9 a pairing ends after 90 days without use, an owner’s after 30, each after 400 days; a restart does not lengthen it', async () => {
    let now = 0
    const store = createMemoryStore()
    const people = new People(store, () => now)
    const secretOf = async (person: 'operator' | 'owner') => (await people.pair(people.invite(person, '')))?.secret
    const operator = await secretOf('operator')
    const owner = await secretOf('owner')
    now = 29 * dayMs
    expect(people.deviceOf(owner)).not.toBeNull()
    now = 60 * dayMs
    expect(people.deviceOf(owner)).toBeNull()
    expect(people.deviceOf(operator)).not.toBeNull()
    const again = new People(store, () => now)
    await again.start()
    now = (60 + 91) * dayMs
    expect(again.deviceOf(operator)).toBeNull()
    const used = await secretOf('operator')
    for (let day = 0; day <= 401; day++) {
      now += dayMs
      if (day < 399) expect(people.deviceOf(used)).not.toBeNull()
    }
    expect(people.deviceOf(used)).toBeNull()
  })

  it('S10 the cookie is HttpOnly, SameSite=Strict and for the whole path', async () => {
    const paired = await live.json('POST', '/api/people/pair', { code: await invite() }, '', '127.0.0.9')
    const cookie = String(paired.headers['set-cookie']?.[0])
    for (const word of ['HttpOnly', 'SameSite=Strict', 'Path=/']) expect(cookie).toContain(word)
    expect(cookie).not.toContain('Domain')
  })
})
