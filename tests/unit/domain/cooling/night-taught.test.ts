import { expect, test } from 'vitest'
import { defaultKilnConfig } from '../../../../server/contract/kiln-defaults.ts'
import type { Input, Output } from '../../../../server/contract/fold.ts'
import { makeKilnFold } from '../../../../server/domain/firing/fold.ts'

const hourMs = 3_600_000
const lit = Date.UTC(2026, 2, 1, 6)
const sealH = 9
const airC = 20
const fold = makeKilnFold(null)

/** A drum that warms, is sealed, falls by one rate and is opened; told to the fold as a node and a person tell it. */
function night(crackH: number, perH: (sealedH: number) => number): Output[] {
  let state = fold.start(defaultKilnConfig())
  const outputs: Output[] = []
  let seq = 0
  const put = (input: Input): void => {
    const result = fold.step(state, input)
    state = result.state
    outputs.push(...result.outputs)
  }
  const roles = ['firebox', 'wall', 'ambient'] as const
  for (const role of roles) put({ seq: ++seq, at: lit - hourMs, kind: 'channel', channel: `yard/n1/${role}`, periodS: 60, lsb: 0.25 })
  const acts = [[0, 'light'], [sealH, 'seal'], [crackH, 'crack']] as const // prettier-ignore
  let over = 0
  let firebox = airC
  for (let at = lit - hourMs; at <= lit + (crackH + 0.5) * hourMs; at += 60_000) {
    const h = (at - lit) / hourMs
    for (const [actH, action] of acts)
      if (Math.abs(h - actH) < 1 / 240) put({ seq: ++seq, at, kind: 'act', id: action, doneAt: at, act: { action } })
    if (h > 0 && h < sealH) {
      over = 200 * Math.min(1, h / 6)
      firebox = 620
    } else if (h >= sealH) {
      over *= Math.exp(-perH(h - sealH) / 60)
      firebox += (airC - firebox) / 60
    }
    const values = { firebox, wall: airC + over, ambient: airC }
    for (const role of roles) {
      const value = Math.round(values[role] * 4) / 4
      put({ seq: ++seq, at, kind: 'sample', channel: `yard/n1/${role}`, t: at, late: false, quality: 'good', raw: value, value })
    }
    put({ seq, at: at + 30_000, kind: 'tick' })
  }
  return outputs
}

const lessonsOf = (outputs: readonly Output[]) => outputs.flatMap((o) => (o.kind === 'lesson' && o.lesson.part === 'night' ? o.lesson : []))

test('a quiet night teaches once how its wall fell, and one that held its warmth teaches nothing and is told', () => {
  const quiet = night(33, () => 0.14)
  const [lesson, ...more] = lessonsOf(quiet)
  expect(more).toEqual([])
  // one exponential, by hand: what is left after two hours more of 0.14 1/h
  expect((lesson?.warmthK[8] ?? NaN) / (lesson?.warmthK[4] ?? NaN)).toBeCloseTo(Math.exp(-0.28), 2)
  expect(quiet.some((o) => o.kind === 'alarm' && o.alarm === 'air-leak')).toBe(false)

  const leaky = night(33, (h) => (h < 3 ? 0.14 : Math.max(0.01, 0.14 - 0.03 * (h - 3))))
  expect(lessonsOf(leaky)).toEqual([])
  expect(leaky.some((o) => o.kind === 'alarm' && o.alarm === 'air-leak')).toBe(true)
})
