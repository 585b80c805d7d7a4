import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync } from 'node:fs'
import { request } from 'node:https'
import { connect as connectPlain } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { connect, type SecureVersion } from 'node:tls'
import { afterAll, beforeAll, expect, it } from 'vitest'
import WebSocket from 'ws'
import { driveApp } from '../../support/driven-app.ts'
import type { DrivenApp } from '../../support/driven-app.ts'

// S21 of the handbook's list of checks (reliability, 6). The certificate is made by openssl; without that program this file says so and fails.

let live: DrivenApp
beforeAll(async () => {
  const folder = mkdtempSync(join(tmpdir(), 'tls-'))
  const [key, cert] = [join(folder, 'key.pem'), join(folder, 'cert.pem')]
  const made = [
    'req',
    '-x509',
    '-newkey',
    'ec',
    '-pkeyopt',
    'ec_paramgen_curve:prime256v1',
    '-nodes',
    '-days',
    '2',
    '-subj',
    '/CN=kiln.example',
  ]
  execFileSync('openssl', [...made, '-keyout', key, '-out', cert], { stdio: 'ignore' })
  const tls = { key: readFileSync(key, 'utf8'), cert: readFileSync(cert, 'utf8') }
  live = await driveApp({ at: Date.UTC(2026, 4, 1), tls })
})
afterAll(async () => {
  await live.client.endAsync(true)
  await live.app.stop()
})

/** What the server agrees to, or null where it agrees to nothing. */
function agreed(port: number, version: SecureVersion): Promise<string | null> {
  return new Promise((resolve) => {
    const asked = {
      host: '127.0.0.1',
      port,
      rejectUnauthorized: false,
      minVersion: version,
      maxVersion: version,
      ciphers: 'DEFAULT@SECLEVEL=0',
    }
    const socket = connect(asked, () => {
      resolve(socket.getProtocol())
      socket.destroy()
    })
    socket.on('error', () => resolve(null))
  })
}

/** What a plain connection hears. */
function plain(port: number, bytes: Uint8Array | string): Promise<string> {
  return new Promise((resolve) => {
    let heard = ''
    const socket = connectPlain(port, '127.0.0.1', () => socket.write(bytes))
    socket.on('data', (chunk: Buffer) => (heard += chunk.toString('latin1')))
    socket.on('error', () => {}).on('close', () => resolve(heard))
  })
}

it('S21 with a certificate page, live line and broker speak TLS 1.2 and 1.3 and nothing else; the cookie holds to TLS', async () => {
  const mqttPort = live.mqttPort ?? 0
  for (const port of [live.port, mqttPort]) {
    expect(await agreed(port, 'TLSv1.3')).toBe('TLSv1.3')
    expect(await agreed(port, 'TLSv1.2')).toBe('TLSv1.2')
    expect(await agreed(port, 'TLSv1.1')).toBeNull()
    expect(await agreed(port, 'TLSv1')).toBeNull()
  }
  expect(await plain(live.port, 'GET /api/health HTTP/1.1\r\nHost: localhost\r\n\r\n')).not.toContain('version')
  const connectPacket = Uint8Array.from([0x10, 13, 0, 4, 77, 81, 84, 84, 4, 2, 0, 60, 0, 1, 97])
  expect(await plain(mqttPort, connectPacket)).not.toContain('\u0020\u0002\u0000\u0000')
  await live.publish('readings', { wall: 20 })

  const body = JSON.stringify({ code: live.invitation })
  const cookie = await new Promise<string>((resolve, reject) => {
    const headers = { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) }
    const options = { host: '127.0.0.1', port: live.port, path: '/api/people/pair', method: 'POST', headers, rejectUnauthorized: false }
    request(options, (answer) => resolve(String(answer.headers['set-cookie']?.[0])))
      .on('error', reject)
      .end(body)
  })
  expect(cookie).toMatch(/^__Host-kiln-device=.*; HttpOnly; SameSite=Strict; Path=\/; .*Secure$/)
  const socket = new WebSocket(`wss://127.0.0.1:${live.port}/live`, { rejectUnauthorized: false, headers: { host: 'localhost', cookie } })
  expect(await new Promise((resolve) => socket.once('message', (data: Buffer) => resolve(data.toString().slice(0, 15))))).toContain('hello')
  socket.terminate()
})
