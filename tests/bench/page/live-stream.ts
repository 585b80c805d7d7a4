import type { DemoDay } from '../../moments/demo-day.ts'

/** The probes of the demo's node. */
const probes = ['firebox', 'wall', 'outlet', 'smoke'] as const

/** One reading on its way, by its own time, and when it was handed to the broker's client; all ms since 1970. */
export interface Sent {
  role: string
  t: number
  at: number
}

/** Up and down by single degrees: a jump back would be weighed as an outlier first. */
const rise = [0, 1, 2, 3, 2, 1]

const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms))

/** Each probe once a second in a message of its own, as fast as a wall clock goes; each reading shows another whole degree than the one before. */
export async function streamed(day: DemoDay, seconds: number): Promise<Sent[]> {
  const levels = probes.map((role) => ({ role, level: day.shown(role) ?? 20 }))
  const everyMs = 1000 / levels.length
  const sent: Sent[] = []
  const began = performance.now()
  const from = day.now
  for (let second = 0; second < seconds; second += 1) {
    for (const [index, { role, level }] of levels.entries()) {
      const dueMs = second * 1000 + index * everyMs
      await pause(Math.max(0, began + dueMs - performance.now()))
      const value = level + (rise[second % rise.length] ?? 0)
      day.app.clock.moveTo(from + dueMs)
      const t = Math.floor((from + dueMs) / 1000)
      const payload = [{ bn: 'demo/n1/', bu: 'Cel', n: role, v: value, t, ut: 1 }]
      sent.push({ role, t: t * 1000, at: performance.timeOrigin + performance.now() })
      // not waited for: the next probe does not wait for the disk either
      void day.app.client.publishAsync('firing/1/demo/n1/readings', JSON.stringify(payload), { qos: 1 })
    }
  }
  await pause(1500)
  return sent
}
