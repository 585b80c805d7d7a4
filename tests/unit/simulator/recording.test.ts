import { describe, expect, it } from 'vitest'
import { actionNames } from '../../../server/contract/actions.ts'
import { intakeFold } from '../../../server/domain/intake/fold.ts'
import { demoText } from '../../../server/simulator/demo/demo-lines.ts'
import type { WorldPlan } from '../../../server/simulator/firing/plan.ts'
import { planWorld } from '../../../server/simulator/firing/plan.ts'
import { recordingOf } from '../../../server/simulator/firing/recording.ts'
import { burn } from '../../../server/simulator/firing/world.ts'
import { Chance } from '../../../server/simulator/chance.ts'
import { scriptsOfRecording } from '../../../server/simulator/nodes/recording-script.ts'

const litMs = Date.UTC(2026, 2, 1, 6)

function linesOf(probes: Partial<WorldPlan['probes']>) {
  const plan = planWorld(new Chance('wire'), 'wire', { family: 'pieces', kind: 'never-catches' })
  const firing = burn({ ...plan, probes: { ...plan.probes, ...probes } }, true)
  return { firing, lines: recordingOf(firing, { title: 'Demo data', litMs, node: 'yard/n1' }) }
}

/** What the real door makes of a recording. */
function fold(lines: Record<string, unknown>[]) {
  let state = intakeFold.start({ root: 'firing', site: 'yard' })
  const samples: { channel: string; value: number | null; quality: string; late: boolean; t: number }[] = []
  const refused: unknown[] = []
  lines.slice(1).forEach((line, seq) => {
    if (typeof line['topic'] !== 'string') return
    const payload = new TextEncoder().encode(JSON.stringify(line['payload']))
    const result = intakeFold.step(state, { seq, at: Date.parse(String(line['at'])), topic: line['topic'], payload, retained: false })
    state = result.state
    refused.push(...result.refused)
    for (const input of result.inputs) if (input.kind === 'sample') samples.push(input)
  })
  return { samples, refused, view: intakeFold.view(state) }
}

const wanted = { smoke: true, ambient: true, core: true, spikes: 0, openFrom: null, lost: null, noiseK: 0.3, leadS: 600 } as const

describe('a simulated recording at the real door', () => {
  it.each([
    ['max31855', 'none'],
    ['max31855', 'ntp'],
    ['max31855-raw', 'none'],
    ['max31856', 'ntp'],
  ] as const)('through %s with clock %s: nothing refused, and the true temperature comes out', (converter, clock) => {
    const { firing, lines } = linesOf({ ...wanted, converter, clock, outletChip: 'ds18b20', lsb: 0.25 })
    const { samples, refused } = fold(lines)
    expect(refused).toEqual([])
    const mouth = samples.filter(({ channel }) => channel === 'yard/n1/firebox')
    expect(mouth.length).toBe(firing.sampled.rows)
    const measured = firing.sampled.channels.find(({ name }) => name === 'firebox')?.values ?? []
    const errors = mouth.map(({ value }, i) => Math.abs((value ?? NaN) - Number(measured[i])))
    // half a step of the chip, and for a node that keeps its cold junction to itself the error that the handbook gives for 30 °C assumed
    expect(Math.max(...errors)).toBeLessThan(converter === 'max31855-raw' ? 2.5 : 0.4)
  })

  it('tells faults by word, a wild reading as suspect or odd, and what was kept as late', () => {
    const { lines } = linesOf({ ...wanted, converter: 'max31856', openFrom: 1, lost: { fromH: 2, toH: 2.5, kept: true }, spikes: 0.001 })
    const { samples, refused } = fold(lines)
    expect(refused).toEqual([])
    expect(samples.some(({ quality, value }) => quality === 'fault:open' && value === null)).toBe(true)
    expect(samples.filter(({ late, channel }) => late && channel === 'yard/n1/wall').length).toBe(180)
  })

  it('is in order of arrival, headed as a recording, with known actions only', () => {
    const { lines } = linesOf({ ...wanted, lost: { fromH: 1, toH: 1.2, kept: true } })
    expect(lines[0]).toMatchObject({ recording: 1, kiln: { volumeL: 200, cover: 'earth' } })
    const times = lines.slice(1).map((line) => Date.parse(String(line['at'])))
    expect(times).toEqual([...times].sort((a, b) => a - b))
    for (const { action } of lines as { action?: string }[])
      if (action !== undefined) expect(actionNames as readonly string[]).toContain(action)
  })
})

describe('a recording played by virtual nodes', () => {
  it('gives back the rows and acts of the demo firing', () => {
    const text = demoText()
    const scripts = scriptsOfRecording(text)
    expect([...scripts.keys()]).toEqual(['demo/n1'])
    const script = scripts.get('demo/n1')
    const packs = text.split('\n').filter((line) => line.includes('/readings"')).length
    expect(script?.rows.length).toBe(packs)
    expect(script?.rows[0]?.atS).toBeCloseTo(-900, -1)
    expect(script?.acts.find(({ act }) => act.action === 'light')?.atS).toBe(0)
    expect(script?.channels.map(({ n }) => n)).toEqual(['firebox', 'wall', 'outlet', 'smoke', 'ambient'])
  })

  it('puts late packs where they were measured', () => {
    const line = (at: string, kind: string, up: number, v: number) =>
      JSON.stringify({
        at,
        topic: `firing/1/yard/n1/${kind}`,
        payload: [
          { bn: 'yard/n1/', n: 'wall', v, t: 0 },
          { n: 'boot', v: 1 },
          { n: 'seq', v: up },
          { n: 'up', v: up },
        ],
      })
    const text = [
      '{"recording":1}',
      line('2026-03-01T06:00:10.000Z', 'readings', 10, 20),
      line('2026-03-01T06:00:40.000Z', 'backlog', 20, 30),
      line('2026-03-01T06:00:40.000Z', 'readings', 40, 40),
    ].join('\n')
    expect(
      scriptsOfRecording(text)
        .get('yard/n1')
        ?.rows.map(({ atS, readings }) => [atS, readings[0]?.v]),
    ).toEqual([
      [0, 20],
      [10, 30],
      [30, 40],
    ])
  })

  it('says in one sentence what is no recording', () => {
    expect(() => scriptsOfRecording('{"a":1}')).toThrow(/no recording/)
    expect(() => scriptsOfRecording('{"recording":1}\nnonsense')).toThrow('line 2')
  })
})
