import mqtt from 'mqtt'
import WebSocket from 'ws'
import { routes } from '../../server/contract/routes.ts'
import { RawClient } from '../integration/mqtt/raw-client.ts'
import { driveApp } from '../support/driven-app.ts'
import type { FuzzDoor } from './doors.ts'
import { csvSeeds, jsonSeeds, packetSeeds, recordingSeeds } from './seeds.ts'

const bodies = [
  { id: 'a1', kiln: 'kiln-1', act: { action: 'load', massKg: 72, moisturePct: 25 } },
  { id: 'a2', kiln: 'kiln-1', act: { action: 'observe', smoke: 'white', drip: 'amber' }, doneAt: 1_777_615_205_000 },
  { title: 'a firing' },
  { person: 'viewer', label: 'tablet' },
  { code: 'AAAAAAAAAAAAAAAAAAAAAA' },
  { way: 'confirm' },
  { speed: 60 },
  { right: true },
  { scene: 'outlet-hot' },
  { limits: { outletHotC: 50 } },
  { roles: { 'yard/n1/wall': 'wall' }, name: 'Kiln', calibration: { 'yard/n1/wall': { raw: [0, 100], true: [0, 99] } } },
  { id: 'e1', kind: 'charcoal', lot: 'L1', at: 1_777_615_205_000, kg: 14.5 },
].map((body) => Buffer.from(JSON.stringify(body)))

const words = [
  { type: 'echo', n: 1, visible: true },
  { type: 'act', id: 'a3', kiln: 'kiln-1', act: { action: 'note', text: 'x' }, doneAt: 1_777_615_205_000 },
].map((word) => Buffer.from(JSON.stringify(word)))

const ids = ['x', 'kiln-1', 'L1', 'n1', '..', '%00', '__proto__', 'a'.repeat(300), '%F0%9F%94%A5', 'note', 'lot']

/** The doors of the running house: real broker, real HTTP, real live line, real store. */
export async function liveDoors(): Promise<{ doors: FuzzDoor[]; stop(): Promise<void> }> {
  const errors: string[] = []
  const log = { info: () => {}, warn: () => {}, error: (facts: object) => void errors.push(JSON.stringify(facts).slice(0, 500)) }
  const app = await driveApp({ at: Date.UTC(2026, 4, 1, 6, 0, 5), log })
  // of a name that no changed packet takes over
  const good = await mqtt.connectAsync(`mqtt://127.0.0.1:${app.mqttPort ?? 0}`, { clientId: 'well-behaved', reconnectPeriod: 0 })
  const alive = async (): Promise<void> => {
    const { status } = await fetch(`${app.url}/api/health`)
    if (status !== 200) throw new Error(`health says ${status}`)
  }
  const silent = (): void => {
    const [first] = errors.splice(0)
    if (first !== undefined) throw new Error(`logged as an error: ${first}`)
  }
  const changing = Object.values(routes).filter(({ method }) => method !== 'GET')

  const http: FuzzDoor = {
    name: 'HTTP bodies at every route',
    seeds: [...bodies, ...recordingSeeds, ...csvSeeds, ...jsonSeeds.slice(0, 20)],
    async check(bytes, dice) {
      const route = dice.of(changing)
      const path = route.path.replace(/:\w+/g, () => dice.of(ids))
      const type = 'takes' in route ? 'application/octet-stream' : dice.below(20) === 0 ? 'text/plain' : 'application/json'
      const answer = await fetch(`${app.url}${path}`, {
        method: route.method,
        headers: { 'content-type': type },
        body: route.method === 'DELETE' ? null : new Uint8Array(bytes),
      })
      const text = await answer.text()
      if (answer.status >= 500) throw new Error(`${route.method} ${path} answered ${answer.status} ${text.slice(0, 200)}`)
      if (answer.status >= 400 && !/^\{"problem":"[a-z-]+"/.test(text))
        throw new Error(`${path}: an answer without a code: ${text.slice(0, 200)}`)
      silent()
    },
  }

  const line: FuzzDoor = {
    name: 'messages of the live line',
    seeds: words,
    async check(bytes, dice) {
      const socket = new WebSocket(`ws://127.0.0.1:${app.port}/live`)
      await new Promise<void>((resolve, reject) => socket.once('open', resolve).once('error', reject))
      const closed = new Promise<void>((resolve) => socket.once('close', () => resolve()))
      for (let more = 1 + dice.below(3); more > 0; more--) socket.send(bytes, { binary: dice.below(10) === 0 })
      socket.close()
      await closed
      await alive()
      silent()
    },
  }

  const broker: FuzzDoor = {
    name: 'packets at the broker',
    seeds: packetSeeds,
    async check(bytes, dice) {
      const client = await RawClient.open(app.mqttPort ?? 0)
      for (let at = 0; at < bytes.length;) {
        const size = 1 + dice.below(200)
        client.send(bytes.subarray(at, at + size))
        at += size
      }
      // an answer or the end; what is left unfinished is not waited for
      await client.packet(5)
      client.end()
      if (dice.below(50) === 0) await good.publishAsync('firing/1/yard/well-behaved/readings', '{"outlet":81.5}', { qos: 1 })
      silent()
    },
  }

  return {
    doors: [http, line, broker],
    async stop() {
      await good.endAsync(true)
      await app.client.endAsync(true)
      await app.app.stop()
    },
  }
}
