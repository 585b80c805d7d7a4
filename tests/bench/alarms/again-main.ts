// The service killed while an alarm stands, and started again: npm run bench:alarms -- --again [RESTARTS]
// From the moment a buzzer is connected again until it is told the alarm that stood; what says otherwise before it counts as missed.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import mqtt from 'mqtt'
import { beatEveryMs } from '../../../server/mqtt/said.ts'
import { post } from '../../support/driven-app.ts'
import { startProgram } from '../../support/program.ts'
import { summary } from './summary.ts'

const restarts = Number(process.argv[2] ?? 100)
const patienceMs = 20_000

/** Carbon monoxide at which one must leave (trade facts 7.1.2: 200 ppm), a pack a second, until the alarm sounds. */
async function raise(mqttPort: number): Promise<void> {
  const node = await mqtt.connectAsync(`mqtt://127.0.0.1:${mqttPort}`, { clientId: 'n1', reconnectPeriod: 0 })
  let standing = false
  node.on('message', (_topic, payload) => (standing ||= (JSON.parse(payload.toString()) as { code?: string }).code === 'co-high'))
  await node.subscribeAsync('firing/1/yard/server/alert', { qos: 1 })
  for (let seq = 1; !standing && seq < 60; seq++) {
    const pack = [
      { bn: 'yard/n1/', bu: 'Cel', n: 'firebox', v: 400 + seq, t: 0, ut: 5 },
      { n: 'co', u: '/', v: (300 + (seq % 5)) / 1e6 },
      { n: 'boot', u: 'count', v: 1 },
      { n: 'seq', u: 'count', v: seq },
      { n: 'up', u: 's', v: seq },
    ]
    await node.publishAsync('firing/1/yard/n1/readings', JSON.stringify(pack), { qos: 1 })
    await pause(1000)
  }
  await node.endAsync()
  if (!standing) throw new Error('the alarm was never raised')
}

/** Ms from the connection until the alarm that stood is told; null when something else is told first, or nothing. */
async function untilTold(mqttPort: number): Promise<number | null> {
  const buzzer = await mqtt.connectAsync(`mqtt://127.0.0.1:${mqttPort}`, { clientId: 'again', reconnectPeriod: 0 })
  const from = performance.now()
  const told = new Promise<number | null>((done) =>
    buzzer.once('message', (_topic, payload) => {
      const { level, code } = JSON.parse(payload.toString()) as { level: string; code?: string }
      done(level === 'urgent' && code === 'co-high' ? performance.now() - from : null)
    }),
  )
  await buzzer.subscribeAsync('firing/1/yard/server/alert', { qos: 1 })
  const ms = await Promise.race([told, pause(patienceMs, null)])
  await buzzer.endAsync(true)
  return ms
}

const folder = mkdtempSync(join(tmpdir(), 'again-'))
const took: (number | null)[] = []
let program = await startProgram(folder)
try {
  await post(`${program.url}/api/acts`, { id: 'lit', kiln: 'kiln-1', act: { action: 'light' } })
  await raise(program.mqttPort)
  for (let n = 0; n < restarts; n++) {
    program.child.kill('SIGKILL')
    await program.ended
    program = await startProgram(folder)
    took.push(await untilTold(program.mqttPort))
  }
} finally {
  program.child.kill('SIGKILL')
  await program.ended
  rmSync(folder, { recursive: true, force: true })
}
const inTime = took.filter((ms) => ms !== null && ms <= beatEveryMs).length
console.log(`after a restart: ${summary(took)}`)
console.log(`the alarm that stood told within one beat (${beatEveryMs / 1000} s): ${inTime} of ${took.length}`)
process.exit(inTime === took.length ? 0 : 1)
