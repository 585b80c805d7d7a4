import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { defaultKilnConfig } from '../../../../server/contract/kiln-defaults.ts'
import type { Input, Output } from '../../../../server/contract/fold.ts'
import { kilnFold } from '../../../../server/domain/firing/fold.ts'
import { alarmsOf, callsOf, drum, firing, lightAt, lit, minutesOf, phasesOf, play, rulesOnly, through, withoutSmoke } from './bench.ts'

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
  it('of a smoke probe that is put in while it burns it says that it is new, never that it gives no number', () => {
    const added = (until: number) =>
      play(
        firing(drum, [lit], -14, until).filter(
          (input) => !('channel' in input && input.channel.endsWith('/smoke')) || input.at > lightAt + 120 * 60_000,
        ),
      ).view
    const codes = (until: number) => added(until).command.doubts.flatMap(({ code }) => (code.includes('smoke') ? [code] : []))
    expect(codes(119)).toEqual(['no-smoke-probe'])
    for (const minute of [120.3, 121, 122.5, 123.5]) {
      expect(codes(minute)).toEqual(['smoke-probe-new'])
      expect(added(minute).channels.find(({ role }) => role === 'smoke')?.value).toBeGreaterThan(50)
    }
    expect(codes(125)).toEqual([])
    const broken = play(firing({ ...drum, smoke: () => null }, [lit], -14, 60)).view
    expect(broken.command.doubts.map(({ code }) => code)).toContain('smoke-probe-failed')
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

describe('a fire that nobody logged', () => {
  const fire = (fromMin: number, toMin: number) => through([0, 20], [fromMin, 20], [fromMin + 2, 420], [toMin, 400], [toMin + 20, 25])

  it('is a lighting where the drum is loaded, or where the pipe warms', () => {
    const { view } = play(firing({ firebox: fire(20, 200), wall: () => 20, outlet: () => 18 }, [[5, { action: 'load' }]], 0, 40))
    expect(view.firing).toMatchObject({ phase: 'kindling', litInferred: true })
    const drawn = play(firing({ ...withoutSmoke(drum), firebox: fire(20, 200), outlet: through([0, 18], [24, 18], [60, 50]) }, [], 0, 70))
    expect(drawn.view.firing.litInferred).toBe(true)
    expect(drawn.view.firing.litAt ?? Infinity).toBeLessThan(lightAt + 23 * 60_000)
  })

  it('is one in any case once it has burnt for an hour', () => {
    const { view } = play(firing({ firebox: fire(20, 200) }, [], 0, 90))
    expect(view.firing.litInferred).toBe(true)
  })

  it('is no firing where embers flare up in an emptied drum: nothing is told and nothing to be lit again', () => {
    const embers = firing({ firebox: fire(20, 45), wall: () => 24, outlet: through([0, 20], [20, 20], [40, 26], [90, 21]) }, [], 0, 150)
    const { outputs, view } = play(embers)
    expect(phasesOf(outputs)).toEqual([])
    expect(alarmsOf(outputs)).toEqual([])
    expect(view).toMatchObject({ command: { do: 'none' }, firing: { phase: 'idle', litAt: null, firing: null } })
  })

  it('is forgotten where a trial fire warmed the pipe and is out again', () => {
    const trial = firing(
      { firebox: fire(20, 60), wall: () => 24, outlet: through([0, 20], [20, 20], [35, 40], [60, 40], [90, 21]) },
      [],
      0,
      150,
    )
    const { outputs, view } = play(trial)
    expect(phasesOf(outputs)).toEqual(['kindling', 'idle'])
    expect(view).toMatchObject({ command: { do: 'none' }, hands: null, firing: { phase: 'idle', litAt: null, firing: null } })
    expect(view.alarms.filter(({ state }) => state !== 'normal' && state !== 'suppressed')).toEqual([])
  })

  it('that comes back after the unloading begins nothing', () => {
    const acts: Parameters<typeof firing>[1] = [lit, [540, { action: 'seal' }], [2200, { action: 'crack' }], [2235, { action: 'open' }]]
    const again = { ...drum, firebox: (m: number) => (m > 2260 && m < 2300 ? 300 : drum.firebox!(m)) }
    const { view, outputs } = play(firing(again, [...acts, [2250, { action: 'unload' }]], -10, 2320))
    expect(phasesOf(outputs).at(-1)).toBe('idle')
    expect(view).toMatchObject({ command: { do: 'none' }, firing: { phase: 'idle', firing: null } })
  })

  it('after a trial opening that nobody logged keeps the kiln shut within ten minutes, and is no new firing', () => {
    const flares = through([0, 0], [2301, 0], [2341, 400])
    const fed = { ...drum, firebox: (m: number) => drum.firebox!(m)! + flares(m) }
    const { view, outputs } = play(firing(fed, [lit, [540, { action: 'seal' }]], -10, 2350))
    expect(callsOf(outputs).slice(-2)).toEqual(['open due', 'open withdrawn'])
    expect(minutesOf(outputs, 'call', (o) => o.kind === 'call' && o.state === 'withdrawn')[0]).toBeLessThanOrEqual(2311)
    expect(alarmsOf(outputs)).toContain('reignition')
    expect(view.command.do).toBe('keep-shut')
    expect(phasesOf(outputs).filter((phase) => phase === 'kindling')).toHaveLength(1)
  })
})
