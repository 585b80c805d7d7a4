import { setTimeout as pause } from 'node:timers/promises'
import mqtt from 'mqtt'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { getJson, post } from '../../support/driven-app.ts'
import { yard } from './stranger.ts'
import type { Yard } from './stranger.ts'

// S2 and S3 of the handbook's list of checks (reliability, 6).

let live: Yard
beforeAll(async () => {
  live = await yard()
})
afterAll(() => live.end())

const comeIn = (username?: string, password?: string) =>
  mqtt.connectAsync(`mqtt://127.0.0.1:${String(live.mqttPort)}`, {
    clientId: `c${Math.floor(performance.now() * 1000)}`,
    reconnectPeriod: 0,
    connectTimeout: 4000,
    ...(username === undefined ? {} : { username, password: password ?? '' }),
  })
const refused = async (username?: string, password?: string) =>
  comeIn(username, password).then(
    async (client) => {
      await client.endAsync(true)
      return false
    },
    () => true,
  )
/** True when it was acknowledged, false when the connection was closed instead. */
async function mayPublish(client: mqtt.MqttClient, topic: string): Promise<boolean> {
  const closed = new Promise<boolean>((resolve) => client.once('close', () => resolve(false)))
  client.on('error', () => {})
  const sent = client.publishAsync(topic, '{"wall":20}', { qos: 1 }).then(
    () => true,
    () => false,
  )
  const may = await Promise.race([sent, closed])
  await client.endAsync(true)
  return may
}
const only = async (on: boolean) => {
  const { values } = await getJson<{ values: object }>(`${live.url}/api/settings`)
  expect((await post(`${live.url}/api/settings`, { ...values, onlyPairedNodes: on }, 'PUT')).status).toBe(200)
}
const pair = async (node: string, way: 'confirm' | 'make') =>
  (await (await post(`${live.url}/api/nodes/${node}/key`, { way })).json()) as { secret: string | null }
const keys = () => getJson<{ node: string; state: string; fingerprint: string }[]>(`${live.url}/api/nodes/keys`)
const own = 'a-secret-of-22-letters'

describe('nodes with a secret of their own', () => {
  it('S2 on the first day a node needs none; a paired one does; later only paired ones come in; no two secrets are alike', async () => {
    expect(await mayPublish(await comeIn(), 'firing/1/yard/n7/readings')).toBe(true)
    expect(await mayPublish(await comeIn('n2', own), 'firing/1/yard/n2/readings')).toBe(true)
    expect(await keys()).toMatchObject([{ node: 'n2', state: 'held', fingerprint: expect.stringMatching(/^[0-9a-f]{6}$/) as string }])
    await pair('n2', 'confirm')
    expect(await refused('n2', 'another-secret-of-some-length')).toBe(true)
    expect(await refused('n2', own)).toBe(false)

    const made = await Promise.all(['n3', 'n4', 'n3'].map((node) => pair(node, 'make')))
    expect(new Set(made.map(({ secret }) => secret)).size).toBe(3)
    for (const { secret } of made) expect(Buffer.from(secret ?? '', 'base64url').length * 8).toBeGreaterThanOrEqual(128)

    await only(true)
    expect(await refused()).toBe(true)
    expect(await refused('n8', own)).toBe(true)
    expect(await refused('n4', made[1]?.secret ?? '')).toBe(false)
    expect((await keys()).find(({ node }) => node === 'n8')?.state).toBe('held')
    await only(false)
    expect(await refused()).toBe(false)
    expect(JSON.stringify(await live.store.documents('node-key'))).not.toContain(own)
    expect((await post(`${live.url}/api/nodes/server/key`, { way: 'make' })).status).toBe(422)
    expect((await post(`${live.url}/api/nodes/n99/key`, { way: 'confirm' })).status).toBe(404)
  })

  it('S2 a connection ends with the secret that it came in with, and one without a secret when only paired nodes may come in', async () => {
    const ended = (client: mqtt.MqttClient): Promise<boolean> =>
      Promise.race([new Promise<boolean>((resolve) => client.once('close', () => resolve(true))), pause(10_000, false)])
    const first = await pair('n9', 'make')
    const live9 = await comeIn('n9', first.secret ?? '')
    const other = await comeIn()
    const gone = ended(live9)
    const second = await pair('n9', 'make')
    expect(await gone).toBe(true)
    expect(await refused('n9', first.secret ?? '')).toBe(true)
    // nobody else was sent away, and who has the new secret stays
    expect(other.connected).toBe(true)
    const renewed = await comeIn('n9', second.secret ?? '')
    const otherGone = ended(other)
    await only(true)
    expect(await otherGone).toBe(true)
    expect(renewed.connected).toBe(true)
    await only(false)
    // the first secret that was shown is confirmed: who came in by the same name with another one has to go
    const shown = await comeIn('n10', own)
    const impostor = await comeIn('n10', 'another-secret-of-some-length')
    const impostorGone = ended(impostor)
    await pair('n10', 'confirm')
    expect(await impostorGone).toBe(true)
    expect(shown.connected).toBe(true)
    for (const client of [shown, renewed, live9, other, impostor]) await client.endAsync(true)
  })

  it('S3 a node publishes only its own topics, hears only its own commands, and nobody speaks for a paired one without its secret', async () => {
    const { secret } = await pair('n5', 'make')
    const enter = () => comeIn('n5', secret ?? '')
    expect(await mayPublish(await enter(), 'firing/1/yard/n5/readings')).toBe(true)
    expect(await mayPublish(await enter(), 'firing/1/yard/n6/readings')).toBe(false)
    expect(await mayPublish(await enter(), 'firing/1/yard/server/state')).toBe(false)
    expect(await mayPublish(await comeIn(), 'firing/1/yard/n5/readings')).toBe(false)
    const granted = async (client: mqtt.MqttClient, filter: string) => {
      const code = await client.subscribeAsync(filter, { qos: 1 }).then(
        ([grant]) => grant?.qos,
        () => 128,
      )
      await client.endAsync(true)
      return code === 0 || code === 1
    }
    expect(await granted(await enter(), 'firing/1/yard/n5/cmd')).toBe(true)
    expect(await granted(await enter(), 'firing/1/yard/server/#')).toBe(true)
    expect(await granted(await enter(), 'firing/1/yard/n6/cmd')).toBe(false)
    expect(await granted(await comeIn(), 'firing/1/yard/n5/cmd')).toBe(false)
    expect(await granted(await enter(), '#')).toBe(false)
    expect((await fetch(`${live.url}/api/nodes/n5/key`, { method: 'DELETE' })).status).toBe(204)
    expect(await mayPublish(await comeIn(), 'firing/1/yard/n5/readings')).toBe(true)
  })
})
