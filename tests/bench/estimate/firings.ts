import { readRecording, type Recording } from '../../../server/recordings/read.ts'
import { recordingOf } from '../../../server/simulator/firing/recording.ts'
import { makeFiring } from '../../../server/simulator/firing/world.ts'

// A simulated firing of 33 hours at 10 s (made-up data), as a file of each kind: with the probe in the smoke, and without.

export const hours = 33
const litMs = Date.UTC(2026, 2, 1, 6)

type Named = { n?: string }
const isSmoke = ({ n }: Named): boolean => n !== undefined && n.startsWith('smoke')

function without(line: Record<string, unknown>): Record<string, unknown> {
  const { payload, roles } = line
  if (Array.isArray(payload)) return { ...line, payload: (payload as Named[]).filter((record) => !isSmoke(record)) }
  if (typeof roles === 'object')
    return { ...line, roles: Object.fromEntries(Object.entries(roles ?? {}).filter(([, role]) => role !== 'smoke')) }
  if (typeof payload === 'object' && payload !== null && 'channels' in payload)
    return { ...line, payload: { ...payload, channels: (payload.channels as Named[]).filter((channel) => !isSmoke(channel)) } }
  return line
}

function fileOf(lines: Record<string, unknown>[]): Recording {
  return readRecording(new TextEncoder().encode(lines.map((line) => JSON.stringify(line)).join('\n')))
}

export function firings(): { kind: string; recording: Recording }[] {
  for (let seed = 0; ; seed++) {
    const firing = makeFiring(`bench ${seed}`)
    const { smoke, ambient, core, lost } = firing.plan.probes
    if (!smoke || ambient || core || lost !== null || firing.sampled.rows < (hours * 3600) / 10) continue
    const lines = recordingOf(firing, {
      title: 'Bench, simulated',
      litMs,
      node: 'yard/n1',
      demo: true,
      untilS: hours * 3600 - firing.plan.probes.leadS,
    })
    return [
      { kind: 'smoke probe', recording: fileOf(lines) },
      { kind: 'three probes', recording: fileOf(lines.map(without)) },
    ]
  }
}
