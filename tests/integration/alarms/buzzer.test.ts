import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import mqtt from 'mqtt'
import { afterEach, expect, test } from 'vitest'
import type { Action } from '../../../server/contract/actions.ts'
import { silenceLimitMs } from '../../../server/simulator/buzzer/rules.ts'
import { driveApp, post, type DrivenApp } from '../../support/driven-app.ts'
import { listeningBuzzer, type Listening } from '../../support/listening-buzzer.ts'

const start = Date.UTC(2026, 5, 1, 6, 0, 5)
const ended: (() => Promise<void>)[] = []
afterEach(async () => {
  for (let undo = ended.pop(); undo !== undefined; undo = ended.pop()) await undo()
})

async function app(more: { hostSound?: string } = {}): Promise<DrivenApp> {
  const live = await driveApp({ at: start, ...more })
  ended.push(async () => {
    await live.client.endAsync(true)
    await live.app.stop()
  })
  return live
}

function buzzerAt(mqttPort: number | null, node = 'buzzer'): Listening {
  const listening = listeningBuzzer(mqttPort, node)
  ended.push(() => listening.buzzer.stop())
  return listening
}

/** Carbon monoxide is given in ppm and sent as a ratio (RFC 8798). */
const pack = (seq: number, readings: Record<string, number | string>): object[] => [
  ...Object.entries(readings).map(([n, v], i) => ({
    ...(i === 0 ? { bn: 'yard/n1/', bu: 'Cel', ut: 5 } : {}),
    n,
    ...(typeof v === 'number' ? (n === 'co' ? { u: '/', v: v / 1e6 } : { v }) : { vs: v }),
    t: 0,
  })),
  { n: 'boot', u: 'count', v: 1 },
  { n: 'seq', u: 'count', v: seq },
  { n: 'up', u: 's', v: seq * 5 },
]

class Node {
  private seq = 0
  private readonly live: DrivenApp
  constructor(live: DrivenApp) {
    this.live = live
  }
  /** A pack every 5 s of the stepped clock. */
  async send(packs: number, readings: (n: number) => Record<string, number | string>): Promise<void> {
    for (let n = 0; n < packs; n++) {
      this.seq++
      this.live.clock.moveTo(start + this.seq * 5000)
      await this.live.publish('readings', pack(this.seq, readings(n)))
    }
  }
}

let acts = 0
const act = (live: DrivenApp, what: Action): Promise<Response> =>
  post(`${live.url}/api/acts`, { id: `act-${++acts}`, kiln: 'kiln-1', act: what })
// wire format, `alert`: the buzzer plays 1 for a notice, 2 for a warning, 3 for what is urgent, 0 for none
test('a buzzer plays the level of the worst alarm, is hushed by one act, and sounds again when a shelf ends', async () => {
  const live = await app()
  const { sound } = buzzerAt(live.mqttPort)
  await expect.poll(() => sound()?.pattern).toBe(0)
  const node = new Node(live)
  await act(live, { action: 'light' })
  await node.send(10, (n) => ({ firebox: 300 + n, wall: 20 + n, outlet: 25, co: 2 }))
  await node.send(12, (n) => ({ firebox: 300 + n, wall: 'fault:open', outlet: 25, co: 2 }))
  await expect.poll(() => sound()?.pattern).toBe(1)
  await node.send(5, (n) => ({ firebox: 310 + n, wall: 'fault:open', outlet: 25, co: 60 + n }))
  await expect.poll(() => sound()?.pattern).toBe(2)
  await node.send(5, (n) => ({ firebox: 310 + n, wall: 'fault:open', outlet: 25, co: 300 + n }))
  await expect.poll(() => sound()?.pattern).toBe(3)

  await act(live, { action: 'acknowledge', alarm: 'co-high' })
  await expect.poll(() => sound()?.pattern).toBe(1)
  await act(live, { action: 'acknowledge', alarm: 'probe-fault' })
  await expect.poll(() => sound()?.pattern).toBe(0)

  // one that came late hears what stands, without waiting for a change
  const late = buzzerAt(live.mqttPort, 'late')
  await expect.poll(() => late.sound()).toEqual({ pattern: 0, alone: false, test: false })
  await act(live, { action: 'shelve', alarm: 'co-high', minutes: 5 })
  await node.send(30, (n) => ({ firebox: 310 + n, wall: 'fault:open', outlet: 25, co: 300 + n }))
  expect(sound()?.pattern).toBe(0)
  await node.send(40, (n) => ({ firebox: 310 + n, wall: 'fault:open', outlet: 25, co: 300 + n }))
  await expect.poll(() => sound()?.pattern).toBe(3)
})

// reliability 7.1, third layer: the host's own sound, whatever becomes of buzzer and page
test('the machine of the service sounds by itself what nobody has hushed, and is still afterwards', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'host-sound-'))
  const heard = join(folder, 'heard')
  writeFileSync(heard, '')
  writeFileSync(join(folder, 'sound'), `#!/bin/sh\necho "$@" >> '${heard}'\n`, { mode: 0o700 })
  const sounded = (): string[] => readFileSync(heard, 'utf8').split('\n').filter(Boolean)
  const live = await app({ hostSound: join(folder, 'sound') })
  const node = new Node(live)
  await act(live, { action: 'light' })
  await node.send(6, (n) => ({ firebox: 300 + n, wall: 20 + n, outlet: 25, co: 2 }))
  expect(sounded()).toEqual([])
  await node.send(5, (n) => ({ firebox: 310 + n, wall: 26 + n, outlet: 25, co: 300 + n }))
  // said at once and again while it stands
  await expect.poll(sounded).toContain('urgent co-high')
  await expect.poll(() => sounded().filter((one) => one === 'urgent co-high').length).toBeGreaterThan(1)
  await act(live, { action: 'acknowledge', alarm: 'co-high' })
  const known = sounded().length
  await new Promise((done) => setTimeout(done, 6000))
  expect(sounded().slice(known)).toEqual([])
})

test('what stands is retained: a buzzer that joins while an alarm stands plays it at once', async () => {
  const live = await app()
  const node = new Node(live)
  await act(live, { action: 'light' })
  await node.send(6, (n) => ({ firebox: 300 + n, wall: 20 + n, outlet: 25, co: 2 }))
  await node.send(5, (n) => ({ firebox: 310 + n, wall: 26 + n, outlet: 25, co: 300 + n }))
  const standing = buzzerAt(live.mqttPort, 'standing')
  await expect.poll(() => standing.sound()?.pattern).toBe(3)
  const raw = await mqtt.connectAsync(`mqtt://127.0.0.1:${String(live.mqttPort)}`, { clientId: 'raw', reconnectPeriod: 0 })
  ended.push(() => raw.endAsync(true))
  const first = new Promise<{ retain: boolean; body: unknown }>((done) =>
    raw.once('message', (_topic, payload, packet) => done({ retain: packet.retain, body: JSON.parse(payload.toString()) })),
  )
  await raw.subscribeAsync('firing/1/yard/server/alert', { qos: 1 })
  expect(await first).toMatchObject({ retain: true, body: { level: 'urgent', code: 'co-high', sound: 3 } })
  const { sound, buzzer } = buzzerAt(live.mqttPort)
  await expect.poll(() => sound()?.pattern).toBe(3)
  await buzzer.stop()
  const again = buzzerAt(live.mqttPort)
  await expect.poll(() => again.sound()?.pattern).toBe(3)
})

// reliability 7.1: the beat comes from the loop that evaluates the rules; wire format, `beat`: eight seconds of silence are too many
test('a service that is stopped in order says so, and the buzzer beside a burning kiln is alone at once', async () => {
  const live = await app()
  const { sound } = buzzerAt(live.mqttPort)
  const node = new Node(live)
  await act(live, { action: 'light' })
  await node.send(6, (n) => ({ firebox: 300 + n, wall: 20 + n, outlet: 25, co: 2 }))
  const beat = new Promise<void>((done) => live.client.on('message', () => done()))
  await live.client.subscribeAsync('firing/1/yard/server/beat', { qos: 0 })
  await beat
  await expect.poll(() => sound()).toEqual({ pattern: 0, alone: false, test: false })
  ended.shift()
  await live.client.endAsync(true)
  await live.app.stop()
  await expect.poll(() => sound()?.alone, { timeout: silenceLimitMs }).toBe(true)
})
