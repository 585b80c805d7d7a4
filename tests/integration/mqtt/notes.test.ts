import { rmSync } from 'node:fs'
import mqtt, { type MqttClient } from 'mqtt'
import { expect, it } from 'vitest'
import type { SetupAnswer } from '../../../server/contract/setup.ts'
import { driveApp, getJson } from '../../support/driven-app.ts'
import { messages } from '../../unit/firmware/examples.ts'

it('takes every example of the notes from a node of that name over its own broker, and sets aside those that the notes call wrong', async () => {
  const app = await driveApp({ at: Date.parse('2026-03-01T07:30:00Z') })
  const nodes = new Map<string, MqttClient>([['n1', app.client]])
  for (const { topic, text, at } of messages) {
    const name = topic?.split('/')[3] ?? ''
    const options = { clientId: name, reconnectPeriod: 0 }
    const node = nodes.get(name) ?? (await mqtt.connectAsync(`mqtt://127.0.0.1:${app.mqttPort}`, options))
    nodes.set(name, node)
    app.clock.moveTo(Math.max(at ?? 0, app.clock.now() + 1000))
    await node.publishAsync(topic ?? '', text, { qos: 1 })
  }
  // what was heard is written a while after
  app.clock.moveTo(app.clock.now() + 10_000)
  const wrong = messages.flatMap(({ topic, refused }) => (refused === null ? [] : [{ topic, reason: refused }]))
  expect(wrong.length).toBeGreaterThan(2)
  const setAside = async () => (await app.store.quarantined(100)).map(({ topic, reason }) => ({ topic, reason })).reverse()
  await expect.poll(setAside).toEqual(wrong)
  const { probes } = await getJson<SetupAnswer>(`${app.url}/api/setup`)
  expect(Object.fromEntries(probes.map(({ channel, value, quality }) => [channel, quality === 'good' ? value : quality]))).toMatchObject({
    'yard/n1/outlet': 31.25,
    'yard/n1/firebox': 'fault:open',
    'yard/n2/smoke': 83.5,
    'yard/try/wall': 352,
  })
  for (const node of nodes.values()) await node.endAsync(true)
  await app.app.stop()
  rmSync(app.folder, { recursive: true, force: true })
})
