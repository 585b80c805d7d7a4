import mqtt from 'mqtt'
import { expect, test } from 'vitest'
import { driveApp, post } from '../../support/driven-app.ts'

const start = Date.UTC(2026, 5, 1, 6, 0, 5)

// wire format, "Topics": what the service says under server/
test('a buzzer hears that the service is there, what to do, what alarms, and that it goes', async () => {
  const live = await driveApp({ at: start })
  const heard = new Map<string, { retained: boolean; body: Record<string, unknown> }[]>()
  const buzzer = await mqtt.connectAsync(`mqtt://127.0.0.1:${String(live.mqttPort)}`, { clientId: 'buzzer', reconnectPeriod: 0 })
  buzzer.on('message', (topic, payload, packet) => {
    const kind = topic.replace('firing/1/yard/server/', '')
    heard.set(kind, [
      ...(heard.get(kind) ?? []),
      { retained: packet.retain, body: JSON.parse(payload.toString()) as Record<string, unknown> },
    ])
  })
  await buzzer.subscribeAsync('firing/1/yard/server/#', { qos: 1 })
  const last = (kind: string) => heard.get(kind)?.at(-1)?.body
  await expect.poll(() => last('call/kiln-1')).toMatchObject({ firing: '' })
  expect(heard.get('state')?.[0]).toMatchObject({ retained: true, body: { s: 'online', since: Math.floor(start / 1000) } })
  expect(last('alert')).toMatchObject({ level: 'none', sound: 0 })

  // a probe that breaks while the fire burns
  const pack = (seq: number, wall: object) => [
    { bn: 'yard/n1/', bu: 'Cel', n: 'firebox', v: 300 + seq, t: 0, ut: 5 },
    { n: 'wall', ...wall },
    { n: 'outlet', v: 25 },
    { n: 'boot', u: 'count', v: 1 },
    { n: 'seq', u: 'count', v: seq },
    { n: 'up', u: 's', v: seq * 5 },
  ]
  await post(`${live.url}/api/acts`, { id: 'lit', kiln: 'kiln-1', act: { action: 'light' } })
  for (let seq = 1; seq <= 120; seq++) {
    live.clock.moveTo(start + seq * 5000)
    await live.publish('readings', pack(seq, seq < 20 ? { v: 20 + seq } : { vs: 'fault:open' }))
  }
  await expect.poll(() => last('alert')).toMatchObject({ code: 'probe-fault' })
  expect(last('call/kiln-1')?.firing).not.toBe('')
  await expect.poll(() => last('beat')).toMatchObject({ firing: true })

  await live.client.endAsync(true)
  const stopped = live.app.stop()
  await expect.poll(() => last('state')).toMatchObject({ s: 'offline' })
  await stopped
  await buzzer.endAsync(true)
})
