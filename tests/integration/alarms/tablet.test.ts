import { setTimeout as pause } from 'node:timers/promises'
import { afterEach, expect, test } from 'vitest'
import WebSocket from 'ws'
import type { Curve, ServerMessage } from '../../../server/contract/live.ts'
import { driveApp, getJson, post, type DrivenApp } from '../../support/driven-app.ts'
import { listeningBuzzer } from '../../support/listening-buzzer.ts'
import { unwatchedSpans } from '../../../web/src/lib/chart/around.ts'

// Reliability 11.5: a tablet that stopped is known within 15 s by the echo of the page's script. A real socket, the reference buzzer, and
// the house's own clock stepped second by second.

const start = Date.UTC(2026, 5, 1, 6, 0, 5)
const ended: (() => Promise<void>)[] = []
afterEach(async () => {
  for (let undo = ended.pop(); undo !== undefined; undo = ended.pop()) await undo()
})

/** A page on a socket of its own: it answers beats while it is awake; asleep its socket stays open and even answers pings. */
class Tablet {
  awake = true
  echoes = 0
  readonly socket: WebSocket

  constructor(live: DrivenApp) {
    this.socket = new WebSocket(`ws://127.0.0.1:${live.port}/live`)
    this.socket.on('message', (data: Buffer) => {
      const message = JSON.parse(data.toString()) as ServerMessage
      if (!this.awake || (message.type !== 'beat' && message.type !== 'hello')) return
      this.echoes++
      this.socket.send(JSON.stringify({ type: 'echo', n: message.type === 'beat' ? message.n : 0, visible: true }))
    })
    ended.push(async () => Promise.resolve(this.socket.terminate()))
  }

  /** The next beat has been answered, and the answer read. */
  async answered(): Promise<void> {
    const before = this.echoes
    await expect.poll(() => this.echoes, { timeout: 5000 }).toBeGreaterThan(before)
    await pause(50)
  }
}

test('a tablet that stops is told by the buzzer within 15 s, and the time until it wakes is marked on the curve', async () => {
  const live = await driveApp({ at: start })
  ended.push(async () => {
    await live.client.endAsync(true)
    await live.app.stop()
  })
  const { buzzer, sound } = listeningBuzzer(live.mqttPort)
  ended.push(() => buzzer.stop())
  let now = start
  let seq = 0
  /** Second by second, so that no tick is taken together with the next; the kiln is heard all the while. */
  const pass = async (seconds: number): Promise<void> => {
    for (let n = 0; n < seconds; n++) {
      live.clock.moveTo((now += 1000))
      const at = { n: 'firebox', v: 300 + (++seq % 3), t: 0 }
      const count = (name: string, v: number, u = 'count') => ({ n: name, u, v })
      await live.publish('readings', [
        { bn: 'yard/n1/', bu: 'Cel', ut: 5, ...at },
        count('boot', 1),
        count('seq', seq),
        count('up', seq, 's'),
      ])
    }
  }
  await pass(3)
  await post(`${live.url}/api/acts`, { id: 'lit', kiln: 'kiln-1', act: { action: 'light' } })
  await post(`${live.url}/api/acts`, { id: 'armed', kiln: 'kiln-1', act: { action: 'arm', tablet: true, buzzer: true } })
  const tablet = new Tablet(live)
  await tablet.answered()
  await pass(12)
  expect(sound()?.pattern).toBe(0)
  await tablet.answered()

  tablet.awake = false
  const asleepAt = now
  await pass(12)
  expect(sound()?.pattern).toBe(0)
  await pass(3)
  expect(now - asleepAt).toBe(15_000)
  await expect.poll(() => sound()?.pattern).toBe(2)
  await pass(20)

  tablet.awake = true
  await tablet.answered()
  await pass(2)
  await expect.poll(() => sound()?.pattern).toBe(0)
  const curve = await getJson<Curve>(`${live.url}/api/curve/current`)
  const [blind, ...others] = unwatchedSpans(curve, null)
  expect(others).toEqual([])
  expect(blind?.from).toBeGreaterThan(asleepAt + 12_000)
  expect(blind?.from).toBeLessThanOrEqual(asleepAt + 15_000)
  expect(blind?.to).toBeGreaterThan(asleepAt + 35_000)
}, 30_000)
