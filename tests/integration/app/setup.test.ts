import { rmSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { KilnConfig } from '../../../server/contract/fold.ts'
import type { SettingsChange, SetupAnswer } from '../../../server/contract/setup.ts'
import { documentOf } from '../../../server/runtime/entry.ts'
import { driveApp, getJson, post } from '../../support/driven-app.ts'
import type { DrivenApp } from '../../support/driven-app.ts'

const at = Date.UTC(2026, 4, 5, 9)
let app: DrivenApp
beforeAll(async () => {
  app = await driveApp({ at })
})
afterAll(async () => {
  await app.client.endAsync()
  await app.app.stop()
  rmSync(app.folder, { recursive: true, force: true })
})

const setup = () => getJson<SetupAnswer>(`${app.url}/api/setup`)
const putKiln = (patch: object, kiln = 'kiln-1') => post(`${app.url}/api/setup/kilns/${kiln}`, patch, 'PUT')
async function configs(): Promise<KilnConfig[]> {
  const found: KilnConfig[] = []
  for await (const entries of app.store.read(0))
    for (const entry of entries) if (entry.kind === 'config') found.push(documentOf<KilnConfig>(entry))
  return found
}

describe('a probe without a role', () => {
  it('is heard, and gets one by an entry of the journal, so that a replay knows it too', async () => {
    await app.publish('readings', { t1: 21, wall: 22 })
    expect((await setup()).probes.map(({ channel, value }) => [channel, value])).toEqual([
      ['yard/n1/t1', 21],
      ['yard/n1/wall', 22],
    ])
    expect((await putKiln({ roles: { 'yard/n1/t1': 'outlet' } })).status).toBe(200)
    const roles = { 'yard/n1/wall': 'wall', 'yard/n1/t1': 'outlet' }
    expect((await configs()).at(-1)?.roles).toEqual(roles)
    expect((await setup()).kilns['kiln-1']?.roles).toEqual(roles)
  })

  it('nothing is taken where a field is wrong, and every problem comes at once', async () => {
    const before = (await configs()).length
    const answer = await putKiln({ volumeL: 1, altitudeM: 9000, roles: { 'yard/n1/t1': 'roof' } })
    expect(answer.status).toBe(422)
    const { details } = (await answer.json()) as { details: { path: string }[] }
    expect(details.map(({ path }) => path)).toEqual(['kilns.0.volumeL', 'kilns.0.roles.yard/n1/t1', 'kilns.0.altitudeM'])
    expect((await putKiln({ colour: 'red' })).status).toBe(422)
    expect((await configs()).length).toBe(before)
  })

  it('what was changed stands with who and when', async () => {
    await putKiln({ name: 'Upper' })
    const [change] = await getJson<SettingsChange[]>(`${app.url}/api/settings/changes`)
    expect(change).toEqual({ path: 'kilns.0.name', from: '', to: 'Upper', at, by: 'owner' })
  })

  it('a changed drum, cover or wall probe is told to be learnt anew, and stands in the register', async () => {
    const forget = (what: string, kiln = 'kiln-1') => post(`${app.url}/api/setup/kilns/${kiln}/forget`, { what })
    expect((await forget('probe')).status).toBe(201)
    expect((await forget('weather')).status).toBe(422)
    expect((await forget('drum', 'no-kiln')).status).toBe(422)
    const [kept] = await app.store.documents('kiln-change')
    expect(kept).toMatchObject({ id: 'kiln-1', by: 'owner', json: '{"what":"probe"}' })
    expect(JSON.stringify(await getJson(`${app.url}/api/register`))).toContain('forgetKiln')
  })

  it('one more kiln runs beside the first', async () => {
    expect((await putKiln({ name: 'Lower' }, 'kiln-2')).status).toBe(200)
    expect(Object.keys((await setup()).kilns)).toEqual(['kiln-1', 'kiln-2'])
  })
})

describe('the clock of the box', () => {
  const sure = async () => (await getJson<{ today: { clockSure: boolean } }>(`${app.url}/api/lots`)).today.clockSure
  it('counts for the rest of lots only once a person has said that it is right', async () => {
    expect(await sure()).toBe(false)
    expect((await post(`${app.url}/api/setup/clock`, { right: true })).status).toBe(201)
    expect(await sure()).toBe(true)
    await post(`${app.url}/api/setup/clock`, { right: false })
    expect(await sure()).toBe(false)
    expect((await setup()).clockSure).toBe(false)
  })
})

describe('the buzzer', () => {
  it('is asked to beep by the first half of a sound test, and its answer is shown', async () => {
    const asked = new Promise<{ id: string; do: string }>((resolve) =>
      app.client.on('message', (topic, payload) => {
        if (topic.endsWith('/cmd')) resolve(JSON.parse(payload.toString()) as { id: string; do: string })
      }),
    )
    await app.client.subscribeAsync('firing/1/yard/n1/cmd', { qos: 1 })
    await app.publish('info', { fw: '1', hw: 'board with buzzer', boot: 3, clock: 'none', buffer: 0, channels: [] }, true)
    await app.publish('state', { s: 'ready', boot: 3 }, true)
    await post(`${app.url}/api/acts`, { id: 'arm-1', kiln: 'kiln-1', act: { action: 'arm' } })
    const command = await asked
    expect(command.do).toBe('beep')
    expect((await setup()).beeps).toMatchObject([{ node: 'yard/n1', answer: 'waiting' }])
    await app.publish('ack', { id: command.id, ok: true })
    expect((await setup()).beeps).toMatchObject([{ node: 'yard/n1', answer: 'done' }])
  })

  it('belongs to the kiln while a firing runs: nothing is rehearsed then', async () => {
    const answer = await post(`${app.url}/api/setup/rehearsal`, { scene: 'fire' })
    expect([answer.status, await answer.json()]).toEqual([409, { problem: 'kiln-burns' }])
  })
})
