import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { defaultKilnConfig } from '../../../../server/contract/kiln-defaults.ts'
import type { Input, Output } from '../../../../server/contract/fold.ts'
import { kilnFold } from '../../../../server/domain/firing/fold.ts'
import { callsOf, drum, firing, lightAt, lit, phasesOf, play, rulesOnly, withoutSmoke } from './bench.ts'

const day = firing(
  drum,
  [
    [-10, { action: 'load', massKg: 72, moisturePct: 24, pieceMm: 60 }],
    lit,
    [90, { action: 'refuel' }],
    [170, { action: 'wet-condenser' }],
    [200, { action: 'observe', smoke: 'yellow', drip: 'pale' }],
    [230, { action: 'swap-bottle', litres: 4 }],
    [540, { action: 'seal' }],
  ],
  -14,
  700,
)

describe('a whole firing', () => {
  const { outputs, view } = play(day)

  it('goes through its phases in order', () => {
    expect(phasesOf(outputs)).toEqual(['kindling', 'drying', 'vinegar', 'tar', 'clearing', 'cooling'])
  })
  it('gives each call once', () => {
    expect(callsOf(outputs)).toEqual(['start-collecting due', 'stop-collecting due', 'seal due', 'seal done'])
  })
  it('raises no alarm', () => expect(outputs.filter((o) => o.kind === 'alarm')).toEqual([]))
  it('shows what is to do now and what not before', () => {
    expect(view.command.do).toBe('keep-shut')
    expect(view.calls.find((c) => c.call === 'open')?.state).toBe('not-yet')
    expect(view.firing.charge).toEqual({ massKg: 72, moisturePct: 24, pieceMm: 60 })
    expect(view.firing.bottle).toEqual({ number: 2, litres: 4, sizeL: 5, level: null })
    expect(view.firing.band).toEqual({ startC: 80, stopC: 150 })
    expect(view.firing.ribbon.map((s) => s.phase)).toEqual(phasesOf(outputs))
  })
  it('counts outputs under their cause without a gap or a repeat', () => {
    const seen = new Map<number, number>()
    for (const { cause, n } of outputs) {
      if (seen.has(cause)) expect(n).toBe(seen.get(cause)! + 1)
      seen.set(cause, n)
    }
    expect(new Set(outputs.map((o) => `${o.cause}/${o.n}`)).size).toBe(outputs.length)
  })
  it('tells its times in order', () => {
    for (let i = 1; i < outputs.length; i++) expect(outputs[i]!.at).toBeGreaterThanOrEqual(outputs[i - 1]!.at)
  })
  it('gives the same again', () => expect(play(day).outputs).toEqual(outputs))
})

function cutAt(inputs: readonly Input[], cuts: readonly number[], fold: typeof rulesOnly): Output[] {
  let state = fold.start({ ...defaultKilnConfig(), charge: { massKg: 70, moisturePct: 25 } })
  const outputs: Output[] = []
  inputs.forEach((input, i) => {
    if (cuts.includes(i)) state = fold.thaw(fold.freeze(state))
    const result = fold.step(state, input)
    state = result.state
    outputs.push(...result.outputs)
  })
  return outputs
}

describe('freeze and thaw', () => {
  const some = day.filter(({ at }) => at < lightAt + 130 * 60_000)
  it('anywhere change nothing (rules)', () => {
    const whole = play(some).outputs
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(some.length - 1), { minLength: 1, maxLength: 6 }), (cuts) => {
        expect(cutAt(some, cuts, rulesOnly)).toEqual(whole)
      }),
      { numRuns: 8 },
    )
  })
  it('anywhere change nothing (with the model)', () => {
    const short = day.filter(({ at }) => at < lightAt + 30 * 60_000)
    const fold = kilnFold as unknown as typeof rulesOnly
    expect(cutAt(short, [300, 2003, 3500], fold)).toEqual(cutAt(short, [], fold))
  })
  it('give the same view', () => {
    const { state } = play(some)
    expect(rulesOnly.view(rulesOnly.thaw(rulesOnly.freeze(state)), lightAt)).toEqual(rulesOnly.view(state, lightAt))
  })
})

describe('late data', () => {
  it('changes nothing that is said', () => {
    const late = day.flatMap((input): Input[] =>
      input.kind === 'sample' && input.channel.endsWith('smoke') && input.seq % 50 === 0
        ? [input, { ...input, late: true, t: input.t - 3_600_000, value: 900, raw: 900 }]
        : [input],
    )
    expect(play(late).outputs).toEqual(play(day).outputs)
  })
})

describe('roles', () => {
  it('a channel named after a role takes it; another takes what the set-up says', () => {
    const renamed = day.map((input) =>
      'channel' in input && input.channel.endsWith('/smoke') ? { ...input, channel: 'yard/n1/t4' } : input,
    )
    expect(callsOf(play(renamed, { roles: { 'yard/n1/t4': 'smoke' } }).outputs)).toEqual(callsOf(play(day).outputs))
    expect(
      play(renamed)
        .view.channels.map((c) => c.role)
        .sort(),
    ).toEqual(['firebox', 'outlet', 'wall'])
  })
  it('says what it can not judge without a smoke probe', () => {
    const three = firing(withoutSmoke(drum), [lit], -14, 120)
    expect(play(three).view.command.doubts.map((d) => d.code)).toContain('no-smoke-probe')
  })
})

describe('a reading typed in by hand', () => {
  it('counts as a reading', () => {
    const inputs = firing(
      { firebox: drum.firebox!, outlet: drum.outlet! },
      [lit, [30, { action: 'reading', channel: 'yard/n1/wall', value: 58 }]],
      -5,
      31,
    )
    const wall = play(inputs).view.channels.find((c) => c.role === 'wall')
    expect(wall).toMatchObject({ value: 58, quality: 'good', heard: 'fresh' })
  })
})
