import { request } from 'node:http'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import WebSocket from 'ws'
import { people, routes } from '../../../server/contract/routes.ts'
import type { Person } from '../../../server/contract/routes.ts'
import type { KilnView, ServerMessage } from '../../../server/contract/live.ts'
import { driveApp, getJson, post } from '../../support/driven-app.ts'
import type { DrivenApp } from '../../support/driven-app.ts'

const start = Date.UTC(2026, 4, 1, 6, 0, 5)
let live: DrivenApp

beforeAll(async () => {
  live = await driveApp({ at: start, settings: { names: ['kiln.example'] } })
})
afterAll(async () => {
  await live.client.endAsync(true)
  await live.app.stop()
})

/** A request with a Host header of its own, which fetch does not allow: so it comes from elsewhere than this machine's owner. */
function ask(
  method: string,
  path: string,
  headers: Record<string, string> = {},
  body?: string,
): Promise<{ status: number; headers: Record<string, unknown>; text: string }> {
  const length: Record<string, string> = body === undefined ? {} : { 'content-length': String(Buffer.byteLength(body)) }
  return new Promise((resolve, reject) => {
    const sent = request(
      { host: '127.0.0.1', port: live.port, method, path, headers: { host: `kiln.example:${live.port}`, ...length, ...headers } },
      (answer) => {
        let text = ''
        answer.on('data', (chunk: Buffer) => (text += chunk.toString()))
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text }))
      },
    )
    sent.on('error', reject)
    sent.end(body)
  })
}

async function cookieOf(person: Exclude<Person, 'anyone'>): Promise<string> {
  const { code } = (await (await post(`${live.url}/api/people/invite`, { person, label: person })).json()) as { code: string }
  const paired = await ask('POST', '/api/people/pair', { 'content-type': 'application/json' }, JSON.stringify({ code }))
  expect(paired.status).toBe(200)
  return String((paired.headers['set-cookie'] as string[])[0]).split(';')[0] ?? ''
}

describe('who may do what', () => {
  // the matrix is the route table itself (reliability 6, S11)
  test('every route lets in whom the table names and nobody below', async () => {
    const cookies: Record<Person, string> = {
      anyone: '',
      viewer: await cookieOf('viewer'),
      operator: await cookieOf('operator'),
      owner: await cookieOf('owner'),
    }
    for (const [name, { method, path, least }] of Object.entries(routes)) {
      for (const person of people) {
        const address = path.replace(/:kind/, 'none').replace(/:\w+/g, 'none')
        const answer = await ask(
          method,
          address,
          { cookie: cookies[person], 'content-type': 'application/json' },
          method === 'GET' ? undefined : '{"x":',
        )
        const refused = answer.status === 403 && answer.text.includes('not-allowed')
        expect(refused, `${name} as ${person}: ${answer.status} ${answer.text}`).toBe(people.indexOf(person) < people.indexOf(least))
      }
    }
  })

  test('a tablet is paired by opening a link and one touch, once', async () => {
    const { code } = (await (await post(`${live.url}/api/people/invite`, { person: 'operator' })).json()) as { code: string }
    const stranger = await ask('GET', '/', { 'accept-language': 'es-MX,en;q=0.5' })
    expect(stranger.status).toBe(401)
    expect(stranger.text).toContain('lang="es"')
    const page = await ask('GET', `/pair?code=${code}`)
    expect(page.status).toBe(200)
    expect(page.text).toContain(`value="${code}"`)
    expect((await ask('GET', '/pair?code=%22%3E%3Cscript%3E')).status).toBe(404)
    const form = { 'content-type': 'application/x-www-form-urlencoded' }
    const foreign = await ask('POST', '/pair', { ...form, origin: 'http://evil.example' }, `code=${code}`)
    expect(foreign.status).toBe(403)
    const paired = await ask('POST', '/pair', { ...form, origin: `http://kiln.example:${live.port}` }, `code=${code}`)
    expect(paired.status).toBe(303)
    const cookie = String((paired.headers['set-cookie'] as string[])[0])
    expect(cookie).toMatch(/HttpOnly; SameSite=Strict/)
    const me = await ask('GET', '/api/people/me', { cookie: cookie.split(';')[0] ?? '' })
    expect(JSON.parse(me.text)).toMatchObject({ person: 'operator' })
    expect((await ask('GET', '/', { cookie: cookie.split(';')[0] ?? '' })).status).toBe(200)
    expect((await ask('POST', '/pair', form, `code=${code}`)).status).toBe(403)
  })

  test('the socket is closed to who was never paired, and a viewer may not act on it', async () => {
    const open = (headers: Record<string, string>) =>
      new WebSocket(`ws://127.0.0.1:${live.port}/live`, { headers: { host: `kiln.example:${live.port}`, ...headers } })
    const refused = await new Promise<string>((resolve) => open({}).on('error', (problem) => resolve(problem.message)))
    expect(refused).toContain('401')
    const foreign = await new Promise<string>((resolve) =>
      open({ origin: 'http://evil.example' }).on('error', (problem) => resolve(problem.message)),
    )
    expect(foreign).toContain('403')
    const socket = open({ cookie: await cookieOf('viewer') })
    const answer = new Promise<ServerMessage>((resolve) => {
      socket.on('message', (data: Buffer) => {
        const message = JSON.parse(data.toString()) as ServerMessage
        if (message.type === 'hello')
          socket.send(JSON.stringify({ type: 'act', id: 'v1', kiln: 'kiln-1', act: { action: 'light' }, doneAt: 0 }))
        if (message.type === 'act-refused' || message.type === 'act-taken') resolve(message)
      })
    })
    expect(await answer).toEqual({ type: 'act-refused', id: 'v1', problem: 'not-allowed', params: {} })
    socket.terminate()
  })
})

describe('questions that nobody should ask', () => {
  test.each([
    ['an unknown host', 'GET', '/api/health', { host: 'evil.example' }, undefined, 421],
    ['a foreign page', 'POST', '/api/acts', { origin: 'http://evil.example', 'content-type': 'application/json' }, '{}', 403],
    ['a path out of the folder', 'GET', '/..%2f..%2fpackage.json', {}, undefined, 404],
    ['a hidden folder', 'GET', '/.git/config', {}, undefined, 404],
    ['a source map', 'GET', '/assets/index.js.map', {}, undefined, 404],
  ])('%s', async (_, method, path, headers, body, status) => {
    const answer = await ask(method, path, headers, body)
    expect(answer.status).toBe(status)
    expect(answer.text).not.toContain('    at ')
  })

  test.each([
    ['no JSON', '{', 'application/json', 400],
    ['another type', 'x=1', 'application/x-www-form-urlencoded', 415],
    ['an unknown act', '{"id":"x","kiln":"kiln-1","act":{"action":"dance"}}', 'application/json', 422],
    ['an unknown kiln', '{"id":"x","kiln":"other","act":{"action":"light"}}', 'application/json', 422],
    ['a correction of nothing', '{"id":"x","kiln":"kiln-1","act":{"action":"light"},"corrects":"never"}', 'application/json', 422],
    ['far too much', JSON.stringify({ text: 'x'.repeat(1_100_000) }), 'application/json', 413],
  ])('an act of %s', async (_, body, type, status) => {
    const answer = await fetch(`${live.url}/api/acts`, { method: 'POST', headers: { 'content-type': type }, body })
    expect(answer.status).toBe(status)
  })

  test('a parameter given twice', async () => {
    expect((await fetch(`${live.url}/api/curve/current?points=10&points=20`)).status).toBe(400)
  })

  test('every answer carries the safety headers', async () => {
    for (const path of ['/', '/api/health', '/nowhere']) {
      const { headers } = await fetch(`${live.url}${path}`)
      expect(headers.get('content-security-policy')).toContain("default-src 'self'")
      expect(headers.get('content-security-policy')).not.toContain('unsafe')
      expect(headers.get('x-content-type-options')).toBe('nosniff')
      expect(headers.get('access-control-allow-origin')).toBeNull()
    }
  })
})

describe('the live line', () => {
  test('a reading reaches the socket, an act is answered once however often it is sent, a later browser sees the same', async () => {
    const messages: ServerMessage[] = []
    const socket = new WebSocket(`ws://127.0.0.1:${live.port}/live`)
    const until = (match: (message: ServerMessage) => boolean) =>
      new Promise<ServerMessage>((resolve) => {
        const found = messages.find(match)
        if (found) return resolve(found)
        socket.on('message', (data: Buffer) => {
          const message = JSON.parse(data.toString()) as ServerMessage
          if (match(message)) resolve(message)
        })
      })
    socket.on('message', (data: Buffer) => messages.push(JSON.parse(data.toString()) as ServerMessage))
    await until((message) => message.type === 'hello')
    live.clock.moveTo(start + 10_000)
    const pack = [
      { bn: 'yard/n1/', bu: 'Cel', n: 'wall', v: 123.5, t: 0 },
      { n: 'boot', u: 'count', v: 1 },
      { n: 'seq', u: 'count', v: 1 },
      { n: 'up', u: 's', v: 9 },
    ]
    await live.publish('readings', pack)
    const isWall = (message: ServerMessage) =>
      message.type === 'kiln' &&
      message.part === 'channels' &&
      (message.value as KilnView['channels']).some((c) => c.role === 'wall' && c.value === 123.5)
    await until(isWall)

    const act = { type: 'act', id: 'twice', kiln: 'kiln-1', act: { action: 'light' }, doneAt: start + 9000 }
    socket.send(JSON.stringify(act))
    socket.send(JSON.stringify(act))
    await until((message) => message.type === 'act-taken' && message.id === 'twice')
    expect((await post(`${live.url}/api/acts`, { id: 'twice', kiln: 'kiln-1', act: { action: 'light' } })).status).toBe(200)
    live.clock.moveTo(start + 13_000)
    await until((message) => message.type === 'kiln' && message.part === 'firing' && (message.value as KilnView['firing']).firing !== null)

    const second = new WebSocket(`ws://127.0.0.1:${live.port}/live`)
    const hello = await new Promise<Extract<ServerMessage, { type: 'hello' }>>((resolve) =>
      second.once('message', (data: Buffer) => resolve(JSON.parse(data.toString()) as Extract<ServerMessage, { type: 'hello' }>)),
    )
    const view = hello.kilns['kiln-1']
    expect(view?.firing.acts.map((one) => one.id)).toEqual(['twice'])
    expect(view?.channels.find((c) => c.role === 'wall')?.value).toBe(123.5)
    const seqs = messages.flatMap((message) => (message.type === 'kiln' || message.type === 'site' ? [message.seq] : []))
    expect(seqs).toEqual([...seqs].sort((a, b) => a - b))
    socket.terminate()
    second.terminate()

    const shelved = async () => (await getJson<{ id: string }[]>(`${live.url}/api/firings`)).map((one) => one.id)
    await expect.poll(shelved).toEqual([view?.firing.firing])
    interface Curve {
      series: { key: string; values: (number | null)[] }[]
      marks: object[]
    }
    const curve = () => getJson<Curve>(`${live.url}/api/curve/current`)
    const wall = async () => (await curve()).series.find((line) => line.key === 'wall')?.values ?? []
    await expect.poll(wall).toContain(123.5)
    expect((await curve()).marks).toContainEqual({ t: start + 9000, kind: 'act', code: 'light' })
  })

  test('an entry with a mistyped number is refused by its id; the line stays, and what comes after it arrives', async () => {
    const socket = new WebSocket(`ws://127.0.0.1:${live.port}/live`)
    const answers: ServerMessage[] = []
    const act = (id: string, act: object) => JSON.stringify({ type: 'act', id, kiln: 'kiln-1', act, doneAt: start + 10_000 })
    socket.on('open', () => {
      socket.send(act('wet-200', { action: 'load', massKg: 60, moisturePct: 200 }))
      socket.send(act('after-it', { action: 'note', text: 'goes on' }))
    })
    socket.on('message', (data: Buffer) => {
      const message = JSON.parse(data.toString()) as ServerMessage
      if (message.type === 'act-refused' || message.type === 'act-taken') answers.push(message)
    })
    await expect
      .poll(() => answers)
      .toEqual([
        { type: 'act-refused', id: 'wet-200', problem: 'not-understood', params: {} },
        { type: 'act-taken', id: 'after-it' },
      ])
    socket.terminate()
  })

  test('what is no message of ours closes the socket', async () => {
    for (const text of ['{', '{"type":"dance"}', '[]']) {
      const socket = new WebSocket(`ws://127.0.0.1:${live.port}/live`)
      socket.on('open', () => socket.send(text))
      expect(await new Promise((resolve) => socket.on('close', resolve))).toBe(1008)
    }
  })
})

describe('settings and documents', () => {
  test('settings come with their form; wrong ones name every problem and change nothing', async () => {
    const before = await getJson<{ values: { kilns: object[] }; form: object }>(`${live.url}/api/settings`)
    const wrong = await post(`${live.url}/api/settings`, { ...before.values, port: -1, colour: 'red' }, 'PUT')
    expect(wrong.status).toBe(422)
    expect(((await wrong.json()) as { details: object[] }).details).toHaveLength(2)
    expect((await getJson<{ values: object }>(`${live.url}/api/settings`)).values).toEqual(before.values)
    const kilns = [{ ...before.values.kilns[0], name: 'Upper kiln' }]
    const taken = await post(`${live.url}/api/settings`, { ...before.values, kilns, port: 8500 }, 'PUT')
    expect((await taken.json()) as object).toMatchObject({ restart: ['port'] })
  })

  test('a document keeps every revision', async () => {
    expect((await post(`${live.url}/api/documents/lot/lot-1`, { litres: 3 }, 'PUT')).status).toBe(201)
    expect((await post(`${live.url}/api/documents/lot/lot-1`, { litres: 2 }, 'PUT')).status).toBe(201)
    expect(await getJson(`${live.url}/api/documents/lot`)).toMatchObject([{ id: 'lot-1', revision: 2, document: { litres: 2 } }])
    expect(await getJson(`${live.url}/api/documents/lot/lot-1`)).toMatchObject([{ document: { litres: 3 } }, { document: { litres: 2 } }])
    expect((await fetch(`${live.url}/api/documents/device`)).status).toBe(422)
  })
})

describe('the demo', () => {
  test('plays under its own address and leaves the kiln alone', async () => {
    const before = await getJson<object[]>(`${live.url}/api/firings`)
    expect((await fetch(`${live.url}/demo/api/firings`)).status).toBe(404)
    expect((await post(`${live.url}/api/demo`, { speed: 600 })).status).toBe(200)
    const first = await getJson<{ now: number }>(`${live.url}/demo/api/health`)
    await expect
      .poll(async () => (await getJson<{ demo: boolean }[]>(`${live.url}/demo/api/firings`)).map((one) => one.demo))
      .toEqual([true])
    expect((await getJson<{ now: number }>(`${live.url}/demo/api/health`)).now).toBeGreaterThan(first.now)
    expect((await post(`${live.url}/demo/api/acts`, { id: 'd1', kiln: 'kiln-1', act: { action: 'note', text: 'hello' } })).status).toBe(200)
    expect((await fetch(`${live.url}/demo/`)).status).toBe(200)
    expect((await fetch(`${live.url}/api/demo`, { method: 'DELETE' })).status).toBe(204)
    expect((await fetch(`${live.url}/demo/api/firings`)).status).toBe(404)
    expect(await getJson<object[]>(`${live.url}/api/firings`)).toEqual(before)
  })
})
