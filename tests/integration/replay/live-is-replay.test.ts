import { expect, test } from 'vitest'
import { houseFolds } from '../../../server/runtime/house-folds.ts'
import { eventOf } from '../../../server/recordings/events.ts'
import { play } from '../../../server/recordings/play.ts'
import { readRecording } from '../../../server/recordings/read.ts'
import { sqliteIn } from '../../contract/data-folder.ts'
import { driveApp, getJson, post } from '../../support/driven-app.ts'
import type { DrivenApp } from '../../support/driven-app.ts'

const start = Date.UTC(2026, 2, 1, 7, 12, 3, 250)
const periodS = 40

const birth = (boot: number) => ({
  fw: '1.0.0',
  hw: 'esp32',
  boot,
  clock: 'none',
  buffer: 7200,
  channels: [
    { n: 'firebox', u: 'Cel', sensor: 'K', converter: 'max31855', linearised: false, cj: 'firebox/cj', period: periodS, lsb: 0.25 },
    { n: 'wall', u: 'Cel', sensor: 'K', converter: 'max31855', linearised: false, cj: 'wall/cj', period: periodS, lsb: 0.25 },
    { n: 'outlet', u: 'Cel', sensor: 'ds18b20', linearised: true, period: periodS, lsb: 0.0625 },
  ],
})

/** A made-up firing: warms for four hours, the condenser runs warm once, the wall probe breaks for a while. */
function pack(second: number, node: { boot: number; seq: number; bootedAt: number }, lateS = 0): object[] {
  const quarter = (value: number) => Math.round(value * 4) / 4
  const dry = second > 9000 && second < 10_200
  const broken = second > 6000 && second < 6400
  return [
    { bn: 'yard/n1/', bu: 'Cel', n: 'firebox', v: quarter(Math.min(650, 20 + second / 3)), t: -lateS, ut: periodS },
    { n: 'firebox/cj', v: 24.5, t: -lateS },
    broken ? { n: 'wall', vs: 'fault:open', t: -lateS } : { n: 'wall', v: quarter(20 + second / 45), t: -lateS },
    { n: 'wall/cj', v: 31.25, t: -lateS },
    { n: 'outlet', v: quarter(dry ? 63 : 24 + second / 1500), t: -lateS },
    { n: 'boot', u: 'count', v: node.boot },
    { n: 'seq', u: 'count', v: node.seq },
    { n: 'up', u: 's', v: second - node.bootedAt },
  ]
}

const acts: Record<number, object> = {
  600: { action: 'load', massKg: 74, moisturePct: 24, pieceMm: 60 },
  900: { action: 'light' },
  5400: { action: 'observe', smoke: 'white', drip: 'clear' },
  9600: { action: 'wet-condenser' },
  12_600: { action: 'seal' },
}

test('a firing sent through MQTT, with restarts, duplicates, a reboot and a backlog, replays from its export to the same lines byte for byte', async () => {
  let live: DrivenApp = await driveApp({ at: start })
  const node = { boot: 17, seq: 0, bootedAt: -40 }
  const stored: object[] = []
  await live.publish('info', birth(node.boot), true)
  for (let second = 0; second < 14_400; second += periodS) {
    live.clock.moveTo(start + second * 1000 + (second % 7) * 31)
    if (second === 8000) {
      node.boot++
      node.seq = 0
      node.bootedAt = second - 5
      await live.publish('info', birth(node.boot), true)
    }
    node.seq++
    const document = pack(second, node)
    if (second > 3000 && second < 3300)
      stored.push(document) // no link: the node keeps them
    else await live.publish('readings', document)
    if (second === 3400) for (const late of stored) await live.publish('backlog', late)
    if (second % 1000 === 0) await live.publish('readings', document) // the same pack again, as QoS 1 may bring it
    const act = acts[second]
    if (act) {
      const taken = await post(`${live.url}/api/acts`, { id: `act-${second}`, kiln: 'kiln-1', act, doneAt: live.clock.now() - 4000 })
      expect(taken.status).toBe(200)
    }
    if (second === 4000 || second === 9400) {
      // at 4000 the store is gone before anything else: no last checkpoint, as after a power cut
      if (second === 4000) await live.store.stop()
      await live.client.endAsync(true)
      await live.app.stop()
      live = await driveApp({ at: live.clock.now() + 7300, folder: live.folder })
    }
  }
  await post(`${live.url}/api/acts`, { id: 'last', kiln: 'kiln-1', act: { action: 'unload', charcoalKg: 14 } })
  live.clock.moveTo(live.clock.now() + 2000)
  // the shelf gets its end once everything told before it is on the disk
  const shelf = () => getJson<{ id: string; endedAt: number | null }[]>(`${live.url}/api/firings`)
  await expect.poll(async () => (await shelf())[0]?.endedAt ?? null).not.toBeNull()
  const [firing] = await shelf()
  if (!firing) throw new Error('no firing on the shelf')
  const text = await (await fetch(`${live.url}/api/firings/${firing.id}/recording`)).text()
  await live.client.endAsync(true)
  await live.app.stop()
  // the page is told of some kinds only; what the live run told stands in the store whole
  const store = sqliteIn(live.folder)
  await store.start()
  const told = (await store.outputs(firing.id)).flatMap((output) => {
    const line = eventOf('kiln-1', output)
    return line ? [JSON.stringify(line)] : []
  })
  await store.stop()

  const replayed = [...play(houseFolds, readRecording(new TextEncoder().encode(text)))].map((line) => JSON.stringify(line))
  expect(told.length).toBeGreaterThan(5)
  expect(replayed.slice(0, -1)).toEqual(told)
  expect(JSON.parse(replayed.at(-1) ?? '')).toMatchObject({ event: 'end', refused: {} })
})
