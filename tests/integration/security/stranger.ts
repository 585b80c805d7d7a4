import { request } from 'node:http'
import WebSocket from 'ws'
import type { Person } from '../../../server/contract/routes.ts'
import { driveApp, post } from '../../support/driven-app.ts'
import type { DrivenApp } from '../../support/driven-app.ts'

export interface Heard {
  status: number
  headers: Record<string, string | string[] | undefined>
  text: string
}

/** The real app with every line of its log, asked under a name of the network, which is not the owner's chair. */
export interface Yard extends DrivenApp {
  logged: string[]
  ask(method: string, path: string, more?: { headers?: Record<string, string>; body?: string | Buffer; from?: string }): Promise<Heard>
  json(method: string, path: string, body: unknown, cookie?: string, from?: string): Promise<Heard>
  cookieOf(person: Exclude<Person, 'anyone'>): Promise<string>
  live(headers?: Record<string, string>): WebSocket
  end(): Promise<void>
}

export const name = 'kiln.example'

export async function yard(setup: { at?: number; folder?: string; settings?: object } = {}): Promise<Yard> {
  const logged: string[] = []
  const keep = (facts: object, what: string) => void logged.push(`${what} ${spelled(facts)}`)
  const at = setup.at ?? Date.UTC(2026, 4, 1, 6, 0, 5)
  const log = { info: keep, warn: keep, error: keep }
  const app = await driveApp({ ...setup, at, log, settings: { names: [name], ...setup.settings } })
  const host = `${name}:${app.port}`
  const ask: Yard['ask'] = (method, path, { headers = {}, body, from = '127.0.0.1' } = {}) =>
    new Promise((resolve, reject) => {
      const length: Record<string, string> = body === undefined ? {} : { 'content-length': String(Buffer.byteLength(body)) }
      const options = { host: '127.0.0.1', localAddress: from, port: app.port, method, path, headers: { host, ...length, ...headers } }
      const sent = request(options, (answer) => {
        const chunks: Buffer[] = []
        answer.on('data', (chunk: Buffer) => chunks.push(chunk))
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text: Buffer.concat(chunks).toString() }))
      })
      sent.on('error', reject)
      sent.end(body)
    })
  const json: Yard['json'] = (method, path, body, cookie = '', from = '127.0.0.1') =>
    ask(method, path, { headers: { 'content-type': 'application/json', cookie }, body: JSON.stringify(body), from })
  const cookieOf: Yard['cookieOf'] = async (person) => {
    const { code } = (await (await post(`${app.url}/api/people/invite`, { person, label: person })).json()) as { code: string }
    const paired = await json('POST', '/api/people/pair', { code })
    return String(paired.headers['set-cookie']?.[0]).split(';')[0] ?? ''
  }
  const live = (headers: Record<string, string> = {}) => new WebSocket(`ws://127.0.0.1:${app.port}/live`, { headers: { host, ...headers } })
  const end = async () => {
    await app.client.endAsync(true)
    await app.app.stop()
  }
  return { ...app, logged, ask, json, cookieOf, live, end }
}

function spelled(facts: object): string {
  return JSON.stringify(facts, (_key, value: unknown) => (value instanceof Error ? `${value.message} ${value.stack ?? ''}` : value))
}

/** Status of a refused upgrade, or the code with which an open socket was closed. */
export function endOf(socket: WebSocket): Promise<number> {
  return new Promise((resolve) => {
    socket.on('error', (problem) => resolve(Number(/\d{3}/.exec(problem.message)?.[0] ?? 0)))
    socket.on('close', (code) => resolve(code))
  })
}
