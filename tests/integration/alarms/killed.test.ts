import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import mqtt from 'mqtt'
import { expect, test } from 'vitest'
import { Buzzer } from '../../../server/simulator/buzzer/buzzer.ts'
import { silenceLimitMs, type Sound } from '../../../server/simulator/buzzer/rules.ts'
import { startProgram } from '../../support/program.ts'

/** Reliability 11.5: service dead to distinct sound, ms. */
const limitMs = 10_000

async function firingUnder(mqttPort: number): Promise<void> {
  const node = await mqtt.connectAsync(`mqtt://127.0.0.1:${mqttPort}`, { clientId: 'n1', reconnectPeriod: 0 })
  const document = [
    { bn: 'yard/n1/', bu: 'Cel', n: 'firebox', v: 400, t: 0, ut: 5 },
    { n: 'wall', v: 90 },
    { n: 'outlet', v: 40 },
    { n: 'boot', u: 'count', v: 1 },
    { n: 'seq', u: 'count', v: 1 },
    { n: 'up', u: 's', v: 5 },
  ]
  await node.publishAsync('firing/1/yard/n1/readings', JSON.stringify(document), { qos: 1 })
  await node.endAsync()
}

function ear(mqttPort: number): { buzzer: Buzzer; last: () => Sound | undefined; alone: Promise<number> } {
  const sounds: Sound[] = []
  let told: (at: number) => void = () => undefined
  const alone = new Promise<number>((done) => (told = done))
  const onSound = (sound: Sound): void => {
    if (sound.alone && sounds.length > 0) told(performance.now())
    sounds.push(sound)
  }
  const buzzer = new Buzzer(
    { broker: `mqtt://127.0.0.1:${mqttPort}`, root: 'firing', site: 'yard', node: 'buzzer', boot: 1, onSound },
    false,
  )
  return { buzzer, last: () => sounds.at(-1), alone }
}

/** Heard by anybody who listens: that a firing runs. */
async function burns(mqttPort: number): Promise<void> {
  const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${mqttPort}`, { clientId: 'ear', reconnectPeriod: 0 })
  await client.subscribeAsync('firing/1/yard/server/beat')
  await new Promise<void>((done) =>
    client.on('message', (_topic, payload) => {
      if ((JSON.parse(payload.toString()) as { firing: boolean }).firing) done()
    }),
  )
  await client.endAsync()
}

for (const how of ['SIGKILL', 'SIGSTOP'] as const)
  test(`the service ${how === 'SIGKILL' ? 'killed' : 'frozen'} while the kiln burns: the buzzer sounds by itself within 10 s`, async () => {
    const folder = mkdtempSync(join(tmpdir(), 'killed-'))
    const { child, url, mqttPort, ended } = await startProgram(folder)
    const { buzzer, last, alone } = ear(mqttPort)
    try {
      buzzer.start()
      await firingUnder(mqttPort)
      const lit = await fetch(`${url}/api/acts`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ id: 'lit', kiln: 'kiln-1', act: { action: 'light' } }),
      })
      expect(lit.status).toBeLessThan(300)
      await burns(mqttPort)
      await expect.poll(() => last()).toEqual({ pattern: 0, alone: false, test: false })
      const from = performance.now()
      child.kill(how)
      const afterMs = (await alone) - from
      expect(afterMs).toBeLessThan(limitMs)
      if (how === 'SIGSTOP') expect(afterMs).toBeGreaterThan(silenceLimitMs - 4000)
    } finally {
      await buzzer.stop().catch(() => undefined)
      child.kill('SIGKILL')
      await ended
      rmSync(folder, { recursive: true, force: true })
    }
  })
