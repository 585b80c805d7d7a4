import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { defaultKilnConfig } from '../../server/contract/kiln-defaults.ts'
import type { Input, Output } from '../../server/contract/fold.ts'
import type { Phase } from '../../server/contract/vocabulary.ts'
import { makeKilnFold } from '../../server/domain/firing/fold.ts'

/** A published curve of the smoke, entered by hand: hours after lighting and °C, with what its authors said of it. */
interface Case {
  source: string
  kiln: { volumeL: number; cover: 'earth' | 'none' | 'brick' }
  points: [h: number, c: number][]
  acts: [h: number, action: 'light' | 'seal'][]
  phases: [h: number, among: Phase[], why: string][]
  calls: [call: string, fromH: number, toH: number][]
}

const folder = new URL('curves/', import.meta.url)
const hourMs = 3_600_000
const lit = Date.UTC(2026, 2, 1, 6)
const fold = makeKilnFold(null)

function smokeAt(points: Case['points'], h: number): number {
  const next = points.findIndex(([t]) => t >= h)
  const [t1, c1] = points[next] ?? points[points.length - 1]!
  const [t0, c0] = points[next - 1] ?? [t1 - 1, c1]
  return c0 + ((c1 - c0) * (h - t0)) / (t1 - t0)
}

function play({ kiln, points, acts }: Case): Output[] {
  let state = fold.start({ ...defaultKilnConfig(), ...kiln })
  const outputs: Output[] = []
  const put = (input: Input): void => {
    const result = fold.step(state, input)
    state = result.state
    outputs.push(...result.outputs)
  }
  let seq = 0
  put({ seq: ++seq, at: lit - 1, kind: 'channel', channel: 'yard/n1/smoke', periodS: 60, lsb: 0.25 })
  const left = [...acts]
  for (let at = lit; at <= lit + points[points.length - 1]![0] * hourMs; at += 10_000) {
    const h = (at - lit) / hourMs
    while (left[0] !== undefined && left[0][0] <= h) {
      const [doneH, action] = left.shift()!
      put({ seq: ++seq, at, kind: 'act', id: `${action}-${doneH}`, doneAt: lit + doneH * hourMs, act: { action } })
    }
    if (at % 60_000 === 0) {
      const value = Math.round(smokeAt(points, h) * 4) / 4
      put({ seq: ++seq, at, kind: 'sample', channel: 'yard/n1/smoke', t: at, late: false, quality: 'good', raw: value, value })
    } else put({ seq, at, kind: 'tick' })
  }
  return outputs
}

describe.each(readdirSync(folder).sort())('%s', (name) => {
  const given = JSON.parse(readFileSync(new URL(`${name}/case.json`, folder), 'utf8')) as Case
  const outputs = play(given)
  const phases = outputs.flatMap((o) => (o.kind === 'phase' ? [o] : []))

  it.each(given.phases)('at %d h is %s: %s', (h, among) => {
    const last = phases.filter((o) => o.at <= lit + h * hourMs).at(-1)
    expect(among).toContain(last?.phase)
  })

  it.each(given.calls)('calls %s between %d and %d h', (call, fromH, toH) => {
    const due = outputs.flatMap((o) => (o.kind === 'call' && o.call === call && o.state === 'due' ? [(o.at - lit) / hourMs] : []))
    expect(due).toHaveLength(1)
    expect(due[0]).toBeGreaterThanOrEqual(fromH)
    expect(due[0]).toBeLessThanOrEqual(toH)
  })

  it('goes forward only, with a reason for each phase', () => {
    const order = phases.map((o) => o.phase)
    expect(new Set(order).size).toBe(order.length)
    for (const o of phases) expect(o.because.length).toBeGreaterThan(0)
  })
})
