import type { RecordingHeader, RecordingLine } from '../../server/contract/recording.ts'

/** A short made-up firing of three probes at 10 s: warms for two hours, is sealed, cools. Demo data, no real kiln. */
export function storyLines(hours = 3): RecordingLine[] {
  const from = Date.UTC(2026, 2, 1, 7, 30)
  const lines: RecordingLine[] = []
  for (let second = 0, seq = 1; second < hours * 3600; second += 10, seq++) {
    const at = new Date(from + second * 1000).toISOString()
    const wall = 20 + second / 40
    const payload = [
      { bn: 'yard/n1/', bu: 'Cel', n: 'firebox', v: Math.round(Math.min(700, 20 + second / 3)), t: 0, ut: 10 },
      { n: 'wall', v: Math.round(wall * 4) / 4 },
      { n: 'outlet', v: Math.round(Math.min(60, 20 + second / 120) * 4) / 4 },
      { n: 'boot', u: 'count', v: 3 },
      { n: 'seq', u: 'count', v: seq },
      { n: 'up', u: 's', v: second + 4 },
    ]
    lines.push({ at, topic: 'firing/1/yard/n1/readings', payload, retained: false })
    if (second === 600) lines.push({ at, id: 'a1', doneAt: at, action: 'light' })
    if (second === Math.floor(hours * 270) * 10) lines.push({ at, id: 'a2', doneAt: at, action: 'seal' })
  }
  return lines
}

export const storyHeader: RecordingHeader = {
  recording: 1,
  title: 'Made-up firing',
  charge: { massKg: 72, moisturePct: 25, pieceMm: 60 },
  roles: { 'yard/n1/firebox': 'firebox', 'yard/n1/wall': 'wall', 'yard/n1/outlet': 'outlet' },
  demo: true,
}
