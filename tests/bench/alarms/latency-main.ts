// From the reading that makes an alarm to the sound of the buzzer, over the real broker: npm run bench:alarms -- --latency [ALARMS]
// The kiln's clock is stepped, so that delays of a minute cost none; the time that is measured is the real one.
import mqtt from 'mqtt'
import { Buzzer } from '../../../server/simulator/buzzer/buzzer.ts'
import type { Sound } from '../../../server/simulator/buzzer/rules.ts'
import { driveApp, post, type DrivenApp } from '../../support/driven-app.ts'

const alarms = Number(process.argv[2] ?? 1000)
const start = Date.UTC(2026, 5, 1, 6, 0, 5)
const channelsOfANode = 10
const patienceMs = 5000

function load(port: number, readingsPerS: number): { stop: () => Promise<number> } {
  const nodes = Math.max(1, readingsPerS / channelsOfANode)
  const client = mqtt.connect(`mqtt://127.0.0.1:${port}`, { clientId: 'load', reconnectPeriod: 0 })
  let sent = 0
  const timer = setInterval(() => {
    // a twentieth of a second's packs at a time, by turns
    for (const until = Math.round(((performance.now() - began) / 1000) * nodes); sent < until; sent++) {
      const node = `load${sent % nodes}`
      const seq = Math.floor(sent / nodes) + 1
      const values = Array.from({ length: channelsOfANode }, (_, c) => ({ n: `x${c}`, v: 20 + ((sent + c) % 50), t: 0 }))
      const pack = [
        { bn: `yard/${node}/`, bu: 'Cel', ut: 1, ...values[0] },
        ...values.slice(1),
        ...[
          ['boot', 1],
          ['seq', seq],
        ].map(([n, v]) => ({ n, u: 'count', v })),
        { n: 'up', u: 's', v: seq },
      ]
      client.publish(`firing/1/yard/${node}/readings`, JSON.stringify(pack), { qos: 1 })
    }
  }, 50)
  const began = performance.now()
  return {
    async stop() {
      clearInterval(timer)
      await client.endAsync(true)
      return (sent * channelsOfANode * 1000) / (performance.now() - began)
    },
  }
}

class Ear {
  pattern = 0
  private waiting: { pattern: number; done: (at: number | null) => void } | null = null
  readonly onSound = ({ pattern }: Sound): void => {
    this.pattern = pattern
    if (this.waiting?.pattern === pattern) this.waiting.done(performance.now())
  }
  /** When it was heard; null when it was not. */
  hear(pattern: number): Promise<number | null> {
    if (this.pattern === pattern) return Promise.resolve(performance.now())
    return new Promise((resolve) => {
      const timer = setTimeout(() => resolve(null), patienceMs)
      this.waiting = {
        pattern,
        done: (at) => {
          clearTimeout(timer)
          this.waiting = null
          resolve(at)
        },
      }
    })
  }
}

async function measure(readingsPerS: number): Promise<void> {
  const live: DrivenApp = await driveApp({ at: start })
  const port = live.mqttPort ?? 0
  const ear = new Ear()
  const buzzer = new Buzzer({
    broker: `mqtt://127.0.0.1:${port}`,
    root: 'firing',
    site: 'yard',
    node: 'buzzer',
    boot: 1,
    onSound: ear.onSound,
  })
  buzzer.start()
  await post(`${live.url}/api/acts`, { id: 'lit', kiln: 'kiln-1', act: { action: 'light' } })
  let at = start
  let seq = 0
  const send = async (stepS: number, firebox: number): Promise<void> => {
    seq++
    at += stepS * 1000
    live.clock.moveTo(at)
    await live.publish('readings', [
      { bn: 'yard/n1/', bu: 'Cel', n: 'firebox', v: firebox + (seq % 3), t: 0, ut: 5 },
      { n: 'wall', v: 60 + (seq % 5) },
      { n: 'boot', u: 'count', v: 1 },
      { n: 'seq', u: 'count', v: seq },
      { n: 'up', u: 's', v: (at - start) / 1000 },
    ])
  }
  for (let n = 0; n < 90; n++) await send(10, 600)
  const busy = load(port, readingsPerS)
  const took: number[] = []
  let missed = 0
  // one value alone is an outlier, the second makes it a step; the alarm waits a minute (its on-delay), and as long to end
  for (let n = 0; n < alarms; n++) {
    for (const stepS of [5, 5, 30]) await send(stepS, 300)
    const told = ear.hear(2)
    const from = performance.now()
    await send(31, 300)
    const heardAt = await told
    if (heardAt === null) missed++
    else took.push(heardAt - from)
    for (const stepS of [5, 5, 30, 31]) await send(stepS, 600)
    await ear.hear(0)
  }
  const rate = await busy.stop()
  took.sort((a, b) => a - b)
  const part = (share: number): string => (took[Math.min(took.length - 1, Math.floor(share * took.length))] ?? NaN).toFixed(1)
  console.log(
    `${readingsPerS} readings/s (${rate.toFixed(0)} sent): ${alarms} alarms, ${missed} missed, reading to buzzer p50 ${part(0.5)} ms, p99 ${part(0.99)} ms, slowest ${part(1)} ms`,
  )
  await buzzer.stop()
  await live.client.endAsync(true)
  await live.app.stop()
}

for (const readingsPerS of [60, 2000]) await measure(readingsPerS)
process.exit(0)
