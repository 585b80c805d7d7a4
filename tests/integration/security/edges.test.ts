import { connect } from 'node:net'
import { gzipSync } from 'node:zlib'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { name, yard } from './stranger.ts'
import type { Yard } from './stranger.ts'

// Requirements of OWASP ASVS 5.0 that the list of 36 does not name; which is which stands in ASVS.md.

let live: Yard
beforeAll(async () => {
  live = await yard()
})
afterAll(() => live.end())

/** What a plain connection hears. */
function heard(lines: string[]): Promise<string> {
  return new Promise((resolve) => {
    let text = ''
    const socket = connect(live.port, '127.0.0.1', () => socket.write(`${lines.join('\r\n')}\r\n\r\n`))
    socket.on('data', (chunk: Buffer) => (text += chunk.toString('latin1')))
    socket.on('error', () => {}).on('close', () => resolve(text))
  })
}

it('headers of a proxy say nothing about who asks: ten wrong codes count for the address of the connection', async () => {
  const wrong = (forwarded: string) =>
    live.ask('POST', '/api/people/pair', {
      headers: { 'content-type': 'application/json', 'x-forwarded-for': forwarded, 'x-real-ip': forwarded, forwarded: `for=${forwarded}` },
      body: '{"code":"not-this-one"}',
      from: '127.0.0.61',
    })
  for (let n = 0; n < 10; n++) expect((await wrong(`10.0.0.${n}`)).status).toBe(403)
  expect((await wrong('10.0.0.99')).status).toBe(429)
  const asOwner = { 'x-forwarded-for': '127.0.0.1', 'x-forwarded-host': 'localhost', 'x-user-id': 'owner' }
  expect((await live.ask('GET', '/api/people', { headers: asOwner })).status).toBe(403)
})

it('a request whose end is in doubt is refused: two lengths, or a length beside chunks', async () => {
  const head = ['POST /api/people/pair HTTP/1.1', `Host: ${name}:${live.port}`, 'Content-Type: application/json']
  for (const more of [
    ['Content-Length: 2', 'Transfer-Encoding: chunked'],
    ['Content-Length: 2', 'Content-Length: 3'],
    ['Transfer-Encoding: chunked, identity', 'Content-Length: 2'],
    ['Content-Length: +2'],
    ['Content-Length: 2\r\n X: folded'],
  ]) {
    expect(await heard([...head, ...more]), more.join()).toMatch(/^HTTP\/1\.1 400 /)
  }
})

it('a method that no route has is refused', async () => {
  const cookie = await live.cookieOf('owner')
  for (const method of ['PATCH', 'DELETE', 'PUT', 'OPTIONS', 'PROPFIND']) {
    const { status } = await live.ask(method, '/api/firings', { headers: { cookie } })
    expect([404, 405], method).toContain(status)
  }
})

it('no browser keeps what the service answers', async () => {
  const cookie = await live.cookieOf('owner')
  for (const path of [
    '/api/firings',
    '/api/people',
    '/api/register',
    '/api/settings',
    '/api/nodes/keys',
    '/api/lots',
    '/api/documents/lot',
  ]) {
    const { status, headers } = await live.ask('GET', path, { headers: { cookie } })
    expect(status, path).toBe(200)
    expect(headers['cache-control'], path).toContain('no-store')
  }
})

it('who asks for what is not theirs is logged with route, person and place', async () => {
  const cookie = await live.cookieOf('viewer')
  expect((await live.ask('GET', '/api/register', { headers: { cookie }, from: '127.0.0.62' })).status).toBe(403)
  const line = live.logged.find((text) => text.includes('not allowed') && text.includes('127.0.0.62'))
  expect(line).toContain('"route":"register"')
  expect(line).toContain('"who":"viewer"')
})

it('an uploaded picture is told by its first bytes, has a limit, and comes back as that picture and nothing else', async () => {
  const cookie = await live.cookieOf('operator')
  const put = (body: Buffer, id: string) =>
    live.ask('PUT', `/api/glasses/kiln-1/${id}?drip=pale`, { headers: { cookie, 'content-type': 'application/octet-stream' }, body })
  const jpeg = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), Buffer.alloc(500)])
  for (const [id, body] of Object.entries({
    html: Buffer.from('<script>alert(1)</script>'),
    svg: Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>'),
    elf: Buffer.from('\x7fELF', 'latin1'),
    zip: Buffer.from('PK\x03\x04', 'latin1'),
  })) {
    expect((await put(body, id)).status, id).toBe(422)
  }
  expect((await put(Buffer.concat([jpeg, Buffer.alloc(100_000)]), 'large')).status).toBe(413)
  expect((await put(jpeg, 'good')).status).toBe(204)
  const { headers } = await live.ask('GET', '/api/glasses/kiln-1/good', { headers: { cookie } })
  expect([headers['content-type'], headers['x-content-type-options']]).toEqual(['image/jpeg', 'nosniff'])
})

it('a file of a little that unpacks to much is refused before it is unpacked', async () => {
  const cookie = await live.cookieOf('operator')
  const part = gzipSync(Buffer.alloc(16 * 1024 * 1024, 0x20))
  // RFC 1952, 2.2: a file may have several members
  const body = Buffer.concat(Array.from({ length: 40 }, () => part))
  const headers = { cookie, 'content-type': 'application/octet-stream' }
  const { status, text } = await live.ask('POST', '/api/imports/look?name=bomb.csv.gz', { headers, body })
  expect(body.length).toBeLessThan(1024 * 1024)
  expect([status, (JSON.parse(text) as { problems: { code: string }[] }).problems.map(({ code }) => code)]).toEqual([200, ['too-large']])
})
