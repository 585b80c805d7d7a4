import { EventEmitter } from 'node:events'
import { setTimeout as pause } from 'node:timers/promises'
import { describe, expect, test } from 'vitest'
import type { WebSocket } from 'ws'
import type { Instance } from '../../../server/http/instance.ts'
import { Client } from '../../../server/http/live/client.ts'
import { Hub } from '../../../server/http/live/hub.ts'
import { Parts } from '../../../server/http/live/parts.ts'

/** A socket whose other side reads only when it is told to. */
class SlowSocket extends EventEmitter {
  readonly OPEN = 1
  readyState = 1
  bufferedAmount = 0
  sent: string[] = []
  terminated = false
  private callbacks: (() => void)[] = []
  send(text: string, done: () => void): void {
    this.sent.push(text)
    this.bufferedAmount += text.length
    this.callbacks.push(done)
  }
  read(): void {
    this.bufferedAmount = 0
    for (const done of this.callbacks.splice(0)) done()
  }
  terminate(): void {
    this.terminated = true
  }
  close(): void {
    this.emit('close')
  }
}

describe('a browser on the live socket', () => {
  test('gets everything in order while it reads', () => {
    const socket = new SlowSocket()
    const client = new Client(socket as unknown as WebSocket)
    for (const text of ['a', 'b', 'c']) client.send('key', text)
    expect(socket.sent).toEqual(['a', 'b', 'c'])
  })

  test('gets the newest of each part once it reads again, and no queue of old ones', () => {
    const socket = new SlowSocket()
    const client = new Client(socket as unknown as WebSocket)
    client.send('big', 'x'.repeat(100_000))
    for (let i = 0; i < 500; i++) {
      client.send('channels', `channels ${i}`)
      if (i % 100 === 0) client.send('alarms', `alarms ${i}`)
    }
    expect(socket.sent).toHaveLength(1)
    socket.read()
    expect(socket.sent.slice(1)).toEqual(['alarms 400', 'channels 499'])
  })

  test('is let go when it never reads', () => {
    const socket = new SlowSocket()
    const client = new Client(socket as unknown as WebSocket)
    client.send('big', 'x'.repeat(2_000_000))
    client.send('channels', 'more')
    expect(socket.terminated).toBe(true)
  })
})

/** Of a site without kilns, which must not be asked once it has stopped. */
function siteToLookAt() {
  const site = { stopped: false, askedAfter: 0, changed: () => {} }
  const instance: Partial<Instance> = {
    now: () => 0,
    speed: () => 1,
    clockSure: () => true,
    kilns: () => {
      if (site.stopped) site.askedAfter++
      return []
    },
    siteView: () => ({ nodes: [], refused: {}, health: [], demo: null }),
    listen: (listener) => {
      site.changed = () => listener([])
      return () => {}
    },
  }
  return { site, instance: instance as Instance }
}

test.each([
  ['at once', 40],
  ['in a moment', 0],
])('a telling that was to come %s is taken back when the site stops', async (_when, sinceLastMs) => {
  const { site, instance } = siteToLookAt()
  const hub = new Hub(instance, '1')
  hub.start()
  hub.join(new SlowSocket() as unknown as WebSocket, () => true)
  await pause(sinceLastMs)
  site.changed()
  hub.stop()
  site.stopped = true
  await pause(60)
  expect(site.askedAfter).toBe(0)
})

test('only parts that changed are told', () => {
  const parts = new Parts()
  const site = { nodes: [], refused: {}, health: [], demo: null }
  expect(parts.ofSite(site).map((change) => change.part)).toEqual(['nodes', 'refused', 'health', 'demo'])
  expect(parts.ofSite({ ...site, refused: {} })).toEqual([])
  expect(parts.ofSite({ ...site, refused: { 'bad-json': 1 } })).toEqual([{ type: 'site', part: 'refused', text: '{"bad-json":1}' }])
})
