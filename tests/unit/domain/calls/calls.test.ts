import { describe, expect, it } from 'vitest'
import type { Action } from '../../../../server/contract/actions.ts'
import { defaultLimits } from '../../../../server/contract/fold.ts'
import { makeKilnFold } from '../../../../server/domain/firing/fold.ts'
import type { Advice, Estimator } from '../../../../server/domain/estimate/types.ts'
import {
  alarmsOf,
  callsOf,
  drum,
  lightAt,
  firing,
  lit,
  minutesOf,
  phasesOf,
  play,
  through,
  withoutSmoke,
  type Curves,
} from '../firing/bench.ts'

const see = (drip: 'clear' | 'pale' | 'amber' | 'dark' | 'black'): Action => ({ action: 'observe', drip })
const three = withoutSmoke(drum)
const at = (outputs: ReturnType<typeof play>['outputs'], call: string, state: string): number[] =>
  minutesOf(outputs, 'call', (o) => o.kind === 'call' && o.call === call && o.state === state)

describe('what the operator sees outranks a band', () => {
  it('a dark drip makes the stop due at once', () => {
    const { outputs } = play(firing(drum, [lit, [250, see('dark')]], -5, 260))
    const [stop] = at(outputs, 'stop-collecting', 'due')
    expect(stop).toBeGreaterThanOrEqual(250)
    expect(stop).toBeLessThanOrEqual(251)
  })
  it('clear water holds the start back, and takes one back that was given', () => {
    const held = play(firing(three, [lit, [75, see('clear')], [95, see('clear')]], -5, 112))
    expect(callsOf(held.outputs)).toEqual([])
    const taken = play(firing(three, [lit, [110, see('clear')]], -5, 120))
    expect(callsOf(taken.outputs)).toEqual(['start-collecting due', 'start-collecting withdrawn'])
  })
  it('a clear glass after a pale one is a lull: nothing is held back or taken back', () => {
    const { outputs } = play(firing(three, [lit, [75, see('pale')], [100, see('clear')]], -5, 125))
    expect(callsOf(outputs)).toEqual(['start-collecting due'])
  })
  it('a pale drip or yellow smoke makes the start due', () => {
    for (const act of [see('pale'), { action: 'observe', smoke: 'yellow' } as const]) {
      const [start] = at(play(firing(three, [lit, [60, act]], -5, 65)).outputs, 'start-collecting', 'due')
      expect(start).toBeLessThanOrEqual(61)
    }
  })
  it('a pale drip starts nothing while the fire is out', () => {
    const dead: Curves = { ...three, firebox: through([-15, 20], [0, 20], [10, 600], [40, 560], [70, 90], [300, 30]) }
    const { outputs } = play(firing(dead, [lit, [100, see('pale')]], -5, 120))
    expect(at(outputs, 'start-collecting', 'due')).toEqual([])
  })
  it('only a pale drip, seen later, takes a stop back', () => {
    const early: Curves = { ...three, wall: through([-15, 20], [0, 20], [80, 160], [120, 240], [500, 260]) }
    const plain = play(firing(early, [lit], -5, 260))
    const [stop] = at(plain.outputs, 'stop-collecting', 'due')
    expect(stop).toBeLessThan(250)
    const seen = play(firing(early, [lit, [stop! + 5, see('pale')]], -5, stop! + 20))
    expect(callsOf(seen.outputs)).toEqual(['start-collecting due', 'stop-collecting due', 'stop-collecting withdrawn'])
    const amber = play(firing(early, [lit, [stop! + 5, see('amber')]], -5, stop! + 20))
    expect(callsOf(amber.outputs)).toEqual(['start-collecting due', 'stop-collecting due'])
  })
  it('clear smoke makes the seal due once tar has come', () => {
    const { outputs } = play(firing(three, [lit, [400, see('dark')], [470, { action: 'observe', smoke: 'clear' }]], -5, 490))
    expect(at(outputs, 'seal', 'due')[0]).toBeLessThanOrEqual(485)
  })
})

/** A model that advises by the clock, minutes after lighting. */
const advises = (startAt: number, stopAt: number, sealAt: number) => {
  const model: Estimator<unknown> = {
    version: 9,
    start: () => 0,
    step: (_state, { at: now }) => (now - lightAt) / 60_000,
    estimate: () => null,
    lesson: () => null,
    advice: (minute): Advice => ({
      collectWorthPerH: 1,
      startCollecting: (minute as number) >= startAt,
      stopCollecting: (minute as number) >= stopAt,
      seal: (minute as number) >= sealAt,
      hottestUpperC: null,
      airLeak: false,
      because: { seal: [{ code: 'charred', value: 0.95 }] },
      sure: 'middle',
    }),
    forecast: () => ({ calls: {}, view: { at: 0, smoke: [] } }),
    freeze: () => new Uint8Array(),
    thaw: () => 0,
  }
  return makeKilnFold(model)
}

const cool: Curves = { ...drum, smoke: through([-15, 20], [0, 20], [60, 62], [200, 110], [300, 175], [400, 240], [500, 250]) }

describe('a model beside the probes', () => {
  const late: Curves = { ...drum, smoke: through([-15, 20], [0, 20], [60, 62], [400, 66]) }

  it('starts where the smoke stands late, and only then', () => {
    const startAt = (advisedAt: number) =>
      at(play(firing(late, [lit], -5, 120), {}, advises(advisedAt, 999, 999)).outputs, 'start-collecting', 'due')[0]
    expect(startAt(70)).toBeCloseTo(75, 0)
    // heat that went in is no sign where a model judges: it starts nothing by itself
    expect(startAt(999)).toBeUndefined()
  })
  it('stops in the minute in which the model says so, which it has confirmed by itself', () => {
    const stopAt = (advisedAt: number) =>
      at(play(firing(three, [lit], -5, 330), {}, advises(100, advisedAt, 999)).outputs, 'stop-collecting', 'due')[0]
    expect(stopAt(290)).toBeCloseTo(290, 0)
    expect(stopAt(310)).toBeCloseTo(310, 0)
  })
  it('seals a kiln whose smoke never gets as hot as in the tables, and does not take it back', () => {
    const { outputs } = play(firing(cool, [lit], -5, 500), {}, advises(100, 290, 420))
    expect(at(outputs, 'seal', 'due')[0]).toBeCloseTo(420, 0)
    expect(at(outputs, 'seal', 'withdrawn')).toEqual([])
  })
  it('seals what is charred though no stop was called', () => {
    const { outputs } = play(firing(three, [lit], -5, 320), {}, advises(100, 999, 300))
    expect(at(outputs, 'stop-collecting', 'due')).toEqual([])
    expect(at(outputs, 'seal', 'due')[0]).toBeCloseTo(300, 0)
  })
})

describe('what a stop teaches of the kiln', () => {
  const sealed: [number, Action] = [420, { action: 'seal' }]
  const lessonsOf = ({ outputs }: ReturnType<typeof play>) =>
    outputs.flatMap((output) => (output.kind === 'lesson' && output.lesson.part === 'stop' ? [output.lesson] : []))
  const wallAt = (curves: Curves, minute: number): number => curves['wall']?.(minute) ?? NaN

  it('is the wall where a smoke probe was heard, once, after the seal', () => {
    const played = play(firing(cool, [lit, sealed], -5, 430), {}, advises(100, 290, 999))
    const [lesson, ...more] = lessonsOf(played)
    const due = at(played.outputs, 'stop-collecting', 'due')[0] ?? NaN
    expect(lesson?.wallC).toBeCloseTo(wallAt(cool, due - 3), -1)
    expect(more).toEqual([])
  })
  it('is how long it took, whoever told it', () => {
    const played = play(firing(three, [lit, sealed], -5, 430), {}, advises(100, 290, 999))
    const told = played.outputs.flatMap((output) =>
      output.kind === 'lesson' && output.lesson.part === 'hours' ? [output.lesson.toStop] : [],
    )
    expect(told).toHaveLength(1)
    expect(told[0]).toBeCloseTo(290 / 60, 1)
  })
  it('is nothing where it was seen dark: that came late as often as not', () => {
    expect(lessonsOf(play(firing(cool, [lit, [250, see('dark')], sealed], -5, 430), {}, advises(100, 999, 999)))).toEqual([])
  })
  it('is nothing where the model alone said it: it would be taught by itself', () => {
    expect(lessonsOf(play(firing(three, [lit, sealed], -5, 430), {}, advises(100, 290, 999)))).toEqual([])
  })
})

describe('how sure a command is', () => {
  it('is never more than low while a needed probe is not heard', () => {
    const sure = (curves: Curves): string | undefined => play(firing(curves, [lit], -5, 60), {}, advises(999, 999, 999)).view.command.sure
    expect(sure(three)).toBe('middle')
    for (const role of ['firebox', 'wall', 'outlet'] as const) expect(sure({ ...three, [role]: () => null })).toBe('low')
  })
  it('is not sure because something was logged, only because the drip was seen, and then of less with fire or wall unheard', () => {
    const sure = (curves: Curves, acts: [number, Action][]): string =>
      play(firing(curves, [lit, ...acts], -5, 60), {}, advises(999, 999, 999)).view.command.sure
    const deaf: Curves = { ...three, firebox: () => null, wall: () => null }
    expect(sure(deaf, [[50, { action: 'start-collecting' }]])).toBe('low')
    expect(sure(three, [[50, { action: 'start-collecting' }]])).toBe('middle')
    expect(
      sure(three, [
        [40, { action: 'start-collecting' }],
        [50, see('dark')],
      ]),
    ).toBe('high')
    expect(
      sure(deaf, [
        [40, { action: 'start-collecting' }],
        [50, see('dark')],
      ]),
    ).toBe('middle')
  })
})

describe('a call to seal that nobody answers', () => {
  const acts: [number, Action][] = [lit, [400, see('dark')], [470, { action: 'observe', smoke: 'clear' }]]
  const asked = (curves: Curves, more: [number, Action][], until: number): string[] =>
    play(firing(curves, [...acts, ...more], -5, until)).view.hints.flatMap((h) =>
      h.hint === 'log-seal' ? h.because.map((r) => r.code) : [],
    )
  it('is asked about after a quarter of an hour, until it is logged', () => {
    expect(asked(three, [], 478)).toEqual([])
    expect(asked(three, [], 505)).toEqual(['seal-not-logged'])
    expect(asked(three, [[500, { action: 'seal' }]], 505)).toEqual([])
  })
  const closedAt = (minute: number): Curves => {
    const fall = (curve: (m: number) => number | null, m: number, halfMin: number): number => {
      const from = curve(Math.min(m, minute)) ?? 20
      return m < minute ? from : 20 + (from - 20) * 0.5 ** ((m - minute) / halfMin)
    }
    return { ...three, firebox: (m) => fall(three.firebox!, m, 60), wall: (m) => fall(three.wall!, m, 200) }
  }
  const closed = closedAt(475)
  it('says what the probes show where the kiln looks closed', () => {
    expect(asked(closed, [], 515)).toEqual(['looks-closed'])
  })
  it('asks for no wood from then on, by hint or by alarm: who feeds a closed kiln opens its mouth', () => {
    const { outputs } = play(firing(closed, acts, -5, 900))
    const due = at(outputs, 'seal', 'due')[0]!
    expect(at(outputs, 'seal', 'withdrawn')).toEqual([])
    const after = outputs.filter((o) => o.at > lightAt + due * 60_000)
    expect(after.filter((o) => o.kind === 'hint' && o.hint === 'feed-fire')).toEqual([])
    expect(after.filter((o) => o.kind === 'alarm' && o.alarm.startsWith('fire-'))).toEqual([])
    // the same fall before a call to seal does ask, and alarms
    const early = play(firing(closedAt(250), [lit], -5, 480)).outputs
    expect(at(early, 'seal', 'due')).toEqual([])
    expect(early.some((o) => o.kind === 'hint' && o.hint === 'feed-fire')).toBe(true)
    expect(alarmsOf(early)).toContain('fire-dying')
  })
  it('asks again every half hour while the hearth looks closed or cold, and only once while it burns on', () => {
    const times = (curves: Curves, more: [number, Action][] = []): number[] =>
      play(firing(curves, [...acts, ...more], -5, 700)).outputs.flatMap((o) =>
        o.kind === 'hint' && o.hint === 'log-seal' ? [Math.round((o.at - lightAt) / 60_000)] : [],
      )
    const asks = times(closed)
    expect(asks.length).toBeGreaterThanOrEqual(5)
    for (const [i, minute] of asks.entries()) if (i > 0) expect(minute - asks[i - 1]!).toBe(30)
    expect(times(closed, [[580, { action: 'seal' }]]).every((minute) => minute < 580)).toBe(true)
    expect(times({ ...three, firebox: (m) => Math.min(620, three.firebox!(Math.min(m, 500)) ?? 20) })).toHaveLength(1)
  })
})

describe('a kiln that is logged as sealed and burns on', () => {
  const asks = (curves: Curves, sealMin: number, toMin: number, more: [number, Action, { corrects?: string }?][] = []) => {
    const played = play(firing(curves, [lit, [sealMin, { action: 'seal' }, { id: 'seal' }], ...more], -5, toMin))
    const said = played.outputs.filter((o) => o.kind === 'hint' && o.hint === 'check-seal')
    return { minutes: said.map((o) => Math.round((o.at - lightAt) / 60_000)), hints: played.view.hints }
  }
  it('is asked about, also where it was logged minutes after lighting, every half hour', () => {
    for (const sealMin of [10, 180]) {
      const { minutes, hints } = asks(three, sealMin, sealMin + 110)
      expect(minutes[0]).toBe(sealMin + 40)
      expect(minutes.slice(1)).toEqual([sealMin + 60, sealMin + 90])
      expect(hints).toMatchObject([{ hint: 'check-seal', because: [{ code: 'burns-on' }] }])
    }
  })
  it('is not asked about while its firebox loses half of its heat in an hour', () => {
    const closes: Curves = { ...three, firebox: (m) => (m < 480 ? three.firebox!(m) : 20 + 580 * 0.5 ** ((m - 480) / 60)) }
    expect(asks(closes, 480, 720)).toEqual({ minutes: [], hints: [] })
  })
})

describe('the smoke probe', () => {
  it('stops by the limit of the kiln: 120 stops sooner than 150 (trade facts 2.1, 2.2)', () => {
    const stopAt = (smokeStopC: number): number => {
      const limits = { ...defaultLimits, smokeStopC }
      return at(play(firing(drum, [lit], -5, 380), { limits }).outputs, 'stop-collecting', 'due')[0]!
    }
    expect(stopAt(120)).toBeLessThan(stopAt(150) - 20)
  })
  it('that fails while collecting leaves the call to the other probes, and says so', () => {
    const failing: Curves = { ...drum, smoke: (m) => (m > 220 ? null : drum.smoke!(m)) }
    const { outputs, view } = play(firing(failing, [lit], -5, 420))
    expect(callsOf(outputs)).toContain('stop-collecting due')
    expect(view.command.doubts.map((d) => d.code)).toContain('smoke-probe-failed')
  })
})

describe('a fire that never catches', () => {
  const never: Curves = {
    firebox: through([-15, 20], [0, 20], [20, 590], [40, 600], [60, 500], [90, 330], [120, 200], [180, 75], [320, 36]),
    wall: through([-15, 20], [0, 20], [40, 43], [70, 50], [320, 46]),
    outlet: through([-15, 20], [0, 20], [40, 41], [60, 48], [120, 36], [320, 32]),
  }
  it('gets no start, and is called failed', () => {
    for (const massKg of [45, 70, 110]) {
      const { outputs } = play(firing(never, [lit], -5, 300), { charge: { massKg, moisturePct: 35 } })
      expect(callsOf(outputs), `${massKg} kg`).toEqual([])
      expect(phasesOf(outputs).at(-1)).toBe('failed')
    }
  })
  it('is told to be lit again, and goes on when it is', () => {
    const again: Curves = { ...never, firebox: (m) => (m < 220 ? never.firebox!(m) : through([220, 60], [240, 600], [300, 620])(m)) }
    const { outputs } = play(firing(again, [lit], -5, 290))
    expect(phasesOf(outputs)).toEqual(['kindling', 'drying', 'failed', 'kindling', 'drying'])
  })
})

describe('a charge that is let run by itself', () => {
  it('has the fire taken away when the smoke is thick, and no word of a dying fire after that (trade facts 1.2.3, 2.16)', () => {
    const run: Curves = { ...drum, firebox: (m) => (m > 175 ? 620 * Math.exp(-(m - 175) / 60) + 25 : drum.firebox!(m)) }
    const { outputs } = play(firing(run, [lit, [176, { action: 'stop-feeding' }]], -5, 380), { way: 'let-run' })
    expect(at(outputs, 'stop-feeding', 'due')[0]).toBeGreaterThan(140)
    expect(callsOf(outputs)).toContain('stop-feeding done')
    expect(outputs.filter((o) => o.kind === 'alarm' && o.alarm.startsWith('fire'))).toEqual([])
    expect(phasesOf(outputs)).not.toContain('failed')
  })
  it('is no call where the fire is kept', () => {
    expect(callsOf(play(firing(drum, [lit], -5, 300)).outputs).filter((c) => c.startsWith('stop-feeding'))).toEqual([])
  })
})

describe('forecasts', () => {
  it('are ranges in order, of what is still to come', () => {
    const { outputs } = play(firing(drum, [lit], -5, 380))
    const told = outputs.flatMap((o) => (o.kind === 'forecast' ? [o] : []))
    expect(told.length).toBeGreaterThan(50)
    for (const f of told) {
      expect(f.earliest).toBeGreaterThanOrEqual(f.at)
      expect(f.likely).toBeGreaterThanOrEqual(f.earliest)
      expect(f.latest).toBeGreaterThanOrEqual(f.likely)
    }
  })
})
