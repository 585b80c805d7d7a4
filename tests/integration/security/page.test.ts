import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { Allowance } from '../../../server/http/allowance.ts'
import { people, routes } from '../../../server/contract/routes.ts'
import type { Person } from '../../../server/contract/routes.ts'
import type { ServerMessage } from '../../../server/contract/live.ts'
import { builtFolder } from '../../support/driven-app.ts'
import { endOf, name, yard } from './stranger.ts'
import type { Yard } from './stranger.ts'

// Numbers S11 to S28 are those of the handbook's list of checks (reliability, 6; OWASP ASVS 5.0).

let live: Yard
let cookies: Record<Person, string>
beforeAll(async () => {
  live = await yard()
  cookies = {
    anyone: '',
    viewer: await live.cookieOf('viewer'),
    operator: await live.cookieOf('operator'),
    owner: await live.cookieOf('owner'),
  }
})
afterAll(() => live.end())

const isRefused = ({ status, text }: { status: number; text: string }) => status === 403 && text.includes('not-allowed')
/** Refused or not, as far as the door goes: the body is none, so nothing happens behind it. */
const doorOf = async (method: string, path: string, person: Person) =>
  live.ask(method, path.replace(/:\w+/g, 'none'), {
    headers: { cookie: cookies[person], 'content-type': 'application/json' },
    ...(method === 'GET' ? {} : { body: '{"x":' }),
  })

/** Addresses that are answered, as the server's own table of them says. */
function servedPaths(): string[] {
  const sources = readdirSync('server/http', { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'))
  const text = sources.map((file) => readFileSync(join('server/http', file), 'utf8')).join('\n')
  return [...text.matchAll(/\bapp\.(?:get|post|put|delete|patch|all|on)\(\s*(?:'([^']*)'|([\w.]+))/g)].map(
    (found) => found[1] ?? found[2] ?? '',
  )
}

describe('who may do what', () => {
  it('S11 every route has a least person and keeps everybody below out; a route outside the table fails here', async () => {
    for (const [route, { method, path, least }] of Object.entries(routes)) {
      expect(people, route).toContain(least)
      for (const person of people) {
        expect(isRefused(await doorOf(method, path, person)), `${route} as ${person}`).toBe(people.indexOf(person) < people.indexOf(least))
      }
    }
    // the pairing form, the page, and the table itself
    expect(servedPaths().sort()).toEqual(['*', '/demo', '/pair', '/pair', 'route.method'])
  })

  it('S11 every message of the live line is judged for every person', async () => {
    const act = (person: Person) => {
      const socket = live.live(cookies[person] === '' ? {} : { cookie: cookies[person] })
      const closed = endOf(socket).then(String)
      const answer = new Promise<string>((resolve) => {
        socket.on('open', () =>
          socket.send(JSON.stringify({ type: 'act', id: `ws-${person}`, kiln: 'kiln-1', act: { action: 'note', text: 'x' }, doneAt: 0 })),
        )
        socket.on('message', (data: Buffer) => {
          const { type } = JSON.parse(data.toString()) as ServerMessage
          if (type.startsWith('act-')) resolve(type)
        })
      })
      return Promise.race([closed, answer]).finally(() => socket.terminate())
    }
    expect(await act('anyone')).toBe('401')
    expect(await act('viewer')).toBe('act-refused')
    expect(await act('operator')).toBe('act-taken')
    expect(await act('owner')).toBe('act-taken')
  })

  it('S12 a viewer silences nothing, changes no phase and no lot; an operator manages neither people nor settings', async () => {
    const silence = { id: 's1', kiln: 'kiln-1', act: { action: 'acknowledge', alarm: 'fire-out' } }
    for (const [path, body] of [
      ['/api/acts', silence],
      ['/api/acts', { id: 's2', kiln: 'kiln-1', act: { action: 'seal' } }],
      ['/api/lots/entries', {}],
      ['/api/people/invite', { person: 'owner' }],
    ] as const) {
      expect(isRefused(await live.json('POST', path, body, cookies.viewer)), path).toBe(true)
    }
    for (const [method, path] of [
      ['POST', '/api/people/invite'],
      ['GET', '/api/people'],
      ['DELETE', '/api/people/x'],
      ['PUT', '/api/settings'],
      ['GET', '/api/register'],
      ['GET', '/api/nodes/keys'],
    ] as const) {
      expect(isRefused(await doorOf(method, path, 'operator')), path).toBe(true)
    }
  })
})

describe('pages of others', () => {
  it('S13 what changes something is no GET and comes from our own page: three simple content types from elsewhere are refused', async () => {
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x']) {
      const body = '{"id":"x1","kiln":"kiln-1","act":{"action":"light"}}'
      const foreign = { cookie: cookies.owner, origin: 'http://evil.example', 'content-type': type }
      expect((await live.ask('POST', '/api/acts', { headers: foreign, body })).status).toBe(403)
      const own = { cookie: cookies.owner, 'content-type': type }
      expect((await live.ask('POST', '/api/acts', { headers: own, body })).status).toBe(415)
    }
    const sneaked = { cookie: cookies.owner, 'sec-fetch-site': 'cross-site', 'content-type': 'application/json' }
    expect((await live.ask('POST', '/api/acts', { headers: sneaked, body: '{}' })).status).toBe(403)
  })

  it('S14 the live line: a foreign origin, no pairing and too large or too many messages end it', async () => {
    expect(await endOf(live.live({ origin: 'http://evil.example', cookie: cookies.owner }))).toBe(403)
    expect(await endOf(live.live({ origin: `http://${name}:${live.port}` }))).toBe(401)
    expect(await endOf(live.live({ host: 'evil.example', cookie: cookies.owner }))).toBe(421)
    const large = live.live({ cookie: cookies.viewer })
    large.on('open', () => large.send('x'.repeat(20_000)))
    expect(await endOf(large)).toBe(1009)
    const many = live.live({ cookie: cookies.viewer })
    many.on('open', () => {
      for (let n = 0; n < 1000; n++) many.send(JSON.stringify({ type: 'echo', n, visible: true }))
    })
    expect(await endOf(many)).toBe(1008)
  })

  it('S15 a foreign name that points here is answered with 421', async () => {
    for (const host of ['evil.example', 'kiln.example.evil.example', 'user@kiln.example']) {
      expect([400, 421], host).toContain((await live.ask('GET', '/api/health', { headers: { host } })).status)
    }
    expect((await live.ask('GET', '/api/health')).status).toBe(200)
  })
})

describe('what every answer carries', () => {
  const paths = [
    '/',
    '/api/health',
    '/nowhere',
    '/pair?code=x',
    '/pair?code=0123456789',
    '/api/people',
    '/demo/',
    '/api/curve/current?a=1&a=2',
  ]

  it('S16 a policy that lets in nothing from elsewhere and nothing inline, and a page that needs neither', async () => {
    for (const path of paths) {
      const csp = String((await live.ask('GET', path)).headers['content-security-policy'])
      for (const part of ["default-src 'self'", "object-src 'none'", "base-uri 'none'", "frame-ancestors 'none'"])
        expect(csp, path).toContain(part)
      expect(csp).not.toContain('unsafe')
    }
    const { text } = await live.ask('GET', '/', { headers: { cookie: cookies.viewer } })
    expect(text).not.toMatch(/<script(?![^>]*\bsrc=)|<style|\son\w+=|\sstyle=/i)
    expect(text).not.toMatch(/(?:src|href)="(?:https?:)?\/\//)
  })

  it('S17 nosniff, referrer, permissions and opener policies; no CORS header whatever the origin', async () => {
    for (const path of paths) {
      const { headers } = await live.ask('GET', path, { headers: { origin: 'http://evil.example' } })
      expect(headers).toMatchObject({
        'x-content-type-options': 'nosniff',
        'referrer-policy': 'same-origin',
        'cross-origin-opener-policy': 'same-origin',
      })
      expect(headers['permissions-policy']).toContain('geolocation=()')
      expect(Object.keys(headers).filter((header) => header.startsWith('access-control'))).toEqual([])
    }
  })

  it('S18 the right content type with its charset; JSON is never HTML', async () => {
    const typeOf = async (path: string) =>
      String((await live.ask('GET', path, { headers: { cookie: cookies.owner } })).headers['content-type'])
    expect(await typeOf('/')).toMatch(/^text\/html; charset=utf-8$/i)
    for (const path of ['/api/health', '/api/firings', '/nowhere', '/api/people'])
      expect(await typeOf(path), path).toMatch(/^application\/json/)
  })

  it('S20 a failure within is a code and a number; the trace stands in the log under that number', async () => {
    const { documents } = live.store
    live.store.documents = () => Promise.reject(new Error('a secret path /srv/x.db'))
    const answer = await live.ask('GET', '/api/documents/lot', { headers: { cookie: cookies.viewer } })
    live.store.documents = documents
    expect(answer.status).toBe(500)
    const { problem, id, ...rest } = JSON.parse(answer.text) as { problem: string; id: string }
    expect([problem, rest]).toEqual(['internal', {}])
    const line = live.logged.find((text) => text.includes(id))
    expect(line).toContain('a secret path')
    expect(line).toContain('    at ')
  })

  it('S22 no HSTS: a name of the network whose certificate is lost would lock the operator out', async () => {
    for (const path of paths) expect((await live.ask('GET', path)).headers['strict-transport-security']).toBeUndefined()
  })
})

describe('what comes in', () => {
  it('S24 a flood from one address is cut short, and another address is served meanwhile', async () => {
    const allowance = new Allowance()
    const taken = (count: number, now: number) => Array.from({ length: count }, () => allowance.take('a', now)).filter(Boolean).length
    expect(taken(1000, 0)).toBe(300)
    expect(allowance.take('b', 0)).toBe(true)
    expect(taken(1000, 1000)).toBe(30)
    const statuses = new Set<number>()
    for (let wave = 0; wave < 30 && !statuses.has(429); wave++) {
      const flood = Array.from({ length: 100 }, () => live.ask('GET', '/api/health', { from: '127.0.0.24' }))
      for (const { status } of await Promise.all(flood)) statuses.add(status)
    }
    expect(statuses).toContain(429)
    expect((await live.ask('GET', '/api/health', { from: '127.0.0.25' })).status).toBe(200)
  })

  it('S25 the page is passed by: what it would never send is refused with the member named, and nothing is kept', async () => {
    const before = await live.ask('GET', '/api/firings', { headers: { cookie: cookies.owner } })
    for (const act of [
      { action: 'load', massKg: -1 },
      { action: 'load', massKg: '12' },
      { action: 'load', moisturePct: 1e308 },
      { action: 'note', text: 'x'.repeat(5000) },
      { action: 'shelve', alarm: 'fire-out', minutes: 1e9 },
      { action: 'dance' },
      [],
      null,
    ]) {
      const answer = await live.json('POST', '/api/acts', { id: 'b1', kiln: 'kiln-1', act }, cookies.owner)
      expect(answer.status, JSON.stringify(act)).toBe(422)
      expect(answer.text).toContain('details')
    }
    for (const body of ['', '{', '[1,', '\u0000', '{"a":1}}', 'NaN', '"\\ud800"']) {
      const answer = await live.ask('POST', '/api/acts', { headers: { cookie: cookies.owner, 'content-type': 'application/json' }, body })
      expect([400, 422], body).toContain(answer.status)
    }
    expect((await live.ask('GET', '/api/firings', { headers: { cookie: cookies.owner } })).text).toBe(before.text)
  })

  it('S26 prototype pollution: no door lets a member of Object.prototype in', async () => {
    const keys = Object.getOwnPropertyNames(Object.prototype)
    const evil = '{"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}}}'
    const post = (method: string, path: string, body: string) =>
      live.ask(method, path, { headers: { cookie: cookies.owner, 'content-type': 'application/json' }, body })
    for (const [method, path] of [
      ['PUT', '/api/documents/note/p1'],
      ['PUT', '/api/settings'],
      ['POST', '/api/acts'],
      ['POST', '/api/people/invite'],
      ['PUT', '/api/setup/kilns/kiln-1'],
    ] as const) {
      await post(method, path, evil)
    }
    await live.ask('PUT', '/api/documents/note/__proto__', {
      headers: { cookie: cookies.owner, 'content-type': 'application/json' },
      body: '{}',
    })
    await live.client.publishAsync('firing/1/yard/n1/readings', evil, { qos: 1 })
    await live.client.publishAsync('firing/1/yard/n1/info', evil, { qos: 1 })
    expect(({} as { polluted?: number }).polluted).toBeUndefined()
    expect(Object.getOwnPropertyNames(Object.prototype)).toEqual(keys)
  })

  it('S27 members that nobody asked for change nothing: role, id, time', async () => {
    const { code } = JSON.parse((await live.json('POST', '/api/people/invite', { person: 'viewer' }, cookies.owner)).text) as {
      code: string
    }
    const greedy = { code, person: 'owner', role: 'owner', id: 'mine', pairedAt: 0 }
    const paired = await live.json('POST', '/api/people/pair', greedy, '', '127.0.0.27')
    expect(JSON.parse(paired.text)).toEqual({ person: 'viewer' })
    expect((await live.json('PUT', '/api/settings', { person: 'owner' }, cookies.owner)).status).toBe(422)
    await live.json('PUT', '/api/documents/note/m1', { by: 'owner', revision: 99, at: 0 }, cookies.operator)
    const [kept] = JSON.parse((await live.ask('GET', '/api/documents/note/m1', { headers: { cookie: cookies.viewer } })).text) as object[]
    expect(kept).toMatchObject({ by: 'operator', revision: 1 })
  })

  it('S28 a parameter given twice is refused', async () => {
    const ask = (path: string) => live.ask('GET', path, { headers: { cookie: cookies.owner } })
    for (const path of ['/api/curve/current?points=10&points=20', '/api/register?limit=1&limit=2', '/api/quarantine?limit=1&limit=1']) {
      expect((await ask(path)).status, path).toBe(400)
    }
  })

  it('S31 no text of a user becomes a path: traversal in all spellings gives 404 and no file', async () => {
    const up = ['../', '..%2f', '%2e%2e/', '%2e%2e%2f', '..%5c', '....//', '%252e%252e%252f', '..%c0%af']
    for (const step of up) {
      for (const target of ['package.json', 'server/main.js', 'etc/passwd']) {
        const { status, text } = await live.ask('GET', `/${step.repeat(4)}${target}`, { headers: { cookie: cookies.owner } })
        expect([400, 404], step + target).toContain(status)
        expect(text).not.toMatch(/"dependencies"|root:x:/)
      }
    }
    for (const id of ['..', '../x', 'a/b', '%2e%2e%2fx']) {
      const { status } = await live.json('PUT', `/api/documents/note/${id}`, {}, cookies.owner)
      expect([403, 404, 422, 400], id).toContain(status)
    }
    for (const id of ['%2e%2e%2f%2e%2e%2fpackage.json', 'x%00']) {
      expect((await live.ask('GET', `/api/firings/${id}/recording`, { headers: { cookie: cookies.owner } })).status).toBe(404)
    }
    expect((await live.ask('GET', '/assets/', { headers: { cookie: cookies.owner } })).status).toBe(404)
    expect(readdirSync(join(builtFolder, 'server')).some((file) => file.endsWith('.map'))).toBe(true) // they exist, and are not served
    expect((await live.ask('GET', '/main.js.map', { headers: { cookie: cookies.owner } })).status).toBe(404)
  })

  it('uploads stop at their limit, and at once', async () => {
    const large = Buffer.alloc(17 * 1024 * 1024)
    const headers = { cookie: cookies.operator, 'content-type': 'application/octet-stream', connection: 'close' }
    const status = await live.ask('POST', '/api/imports/look', { headers, body: large }).then(
      (answer) => answer.status,
      (problem: { code?: string }) => problem.code,
    )
    expect([413, 'EPIPE', 'ECONNRESET']).toContain(status)
  })
})
