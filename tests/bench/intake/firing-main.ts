import { startTrack, readTrack, trackSample } from '../../../server/domain/channels/track.ts'
import { intakeFold } from '../../../server/domain/intake/fold.ts'
import type { Message } from '../../../server/domain/intake/types.ts'

const rounds = Number(process.argv[2] ?? 5)
const packs = 14_400
const start = Date.UTC(2026, 2, 1, 6)
const encode = (value: unknown) => new TextEncoder().encode(JSON.stringify(value))
const topic = (kind: string) => `firing/1/yard/n1/${kind}`

const channel = (n: string) => ({ n, sensor: 'K', converter: 'max31855', linearised: false, cj: `${n}/cj`, period: 10, lsb: 0.25 })
const names = ['firebox', 'wall', 'outlet']
const info = { fw: '1', hw: 'esp32', boot: 3, clock: 'ntp', channels: names.map(channel) }
const messages: Message[] = [{ seq: 1, at: start, topic: topic('info'), payload: encode(info), retained: false }]
for (let i = 1; i <= packs; i++) {
  const at = start + i * 10_000
  const t = at / 1000
  const measured = names.flatMap((n, k) => [
    { n, v: Math.round(4 * (300 - 120 * k + 90 * Math.sin(i / 300) + (i % 7) / 5)) / 4, t },
    { n: `${n}/cj`, v: 34.5, t },
  ])
  const identity = Object.entries({ boot: 3, seq: i, up: i * 10 }).map(([n, v]) => ({ n, u: 'count', v }))
  messages.push({
    seq: i + 1,
    at: at + 200,
    topic: topic('readings'),
    payload: encode([{ bn: 'yard/n1/', bu: 'Cel' }, ...measured, ...identity]),
    retained: false,
  })
}

const cpuMs = () => process.cpuUsage().user / 1000
for (let round = 0; round < rounds; round++) {
  let state = intakeFold.start({ root: 'firing', site: 'yard' })
  const tracks = new Map(names.map((n) => [`yard/n1/${n}`, startTrack(10, 0.25)]))
  let tracked = 0
  const began = cpuMs()
  for (const message of messages) {
    const { state: next, inputs } = intakeFold.step(state, message)
    state = next
    const beganTracks = cpuMs()
    for (const input of inputs) {
      const track = input.kind === 'sample' ? tracks.get(input.channel) : undefined
      if (input.kind === 'sample' && track !== undefined) readTrack(trackSample(track, input), message.at)
    }
    tracked += cpuMs() - beganTracks
  }
  const whole = cpuMs() - began
  const bytes = intakeFold.freeze(state)
  const samples = intakeFold.view(state)[0]?.samples ?? 0
  console.log(
    `${packs} packs, ${samples} samples: intake ${(whole - tracked).toFixed(0)} ms, tracks ${tracked.toFixed(0)} ms of CPU; checkpoint ${bytes.length} bytes`,
  )
}
