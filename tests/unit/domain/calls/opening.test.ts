import { describe, expect, it } from 'vitest'
import type { Action } from '../../../../server/contract/actions.ts'
import { alarmsOf, firing, lightAt, lit, play, type Curves } from '../firing/bench.ts'

const sealMin = 200
const sealed: [number, Action] = [sealMin, { action: 'seal' }]
/** Warms in a straight line until the seal and loses from then on all but a share `1/e` every `tauMin`. */
const cools = (topC: number, tauMin: number) => (m: number) =>
  m < sealMin ? 20 + ((topC - 20) * Math.max(0, m)) / sealMin : 20 + (topC - 20) * Math.exp((sealMin - m) / tauMin)
const night: Curves = { firebox: cools(600, 60), wall: cools(200, 150), outlet: () => 20 }
const opening = (curves: Curves, toMin: number, acts: [number, Action][] = []) =>
  play(firing(curves, [lit, sealed, ...acts], -15, toMin)).outputs.flatMap((o) =>
    o.kind === 'call' && o.call === 'open'
      ? [{ state: o.state, min: (o.at - lightAt) / 60_000, because: o.because.map((r) => r.code) }]
      : [],
  )

// Each way an instrument may fall silent leaves the last good picture standing: what no longer is watched is no longer told as safe (trade facts 7.3.8).
describe('an opening that is called', () => {
  it('stands while the probes are heard', () => {
    expect(opening(night, 1100).map(({ state }) => state)).toEqual(['due'])
  })
  it.each([
    ['the wall', { ...night, wall: (m: number) => (m < 1000 ? night.wall!(m) : null) }, 'wall-unknown', 30],
    ['the air', { ...night, outlet: (m: number) => (m < 1000 ? 20 : null) }, 'hottest-unknown', 90],
  ])('is taken back once %s is heard no more, and does not come back by itself', (_what, curves, code, withinMin) => {
    const [due, taken, ...more] = opening(curves, 1150)
    expect(due).toMatchObject({ state: 'due' })
    expect(taken).toMatchObject({ state: 'withdrawn', because: [code] })
    expect(taken!.min).toBeGreaterThan(1010)
    expect(taken!.min).toBeLessThan(1000 + withinMin)
    expect(more).toEqual([])
  })
  it('asks for the wall probe to be pressed on where nothing inside is measured', () => {
    const doubts = (until: number) => play(firing(night, [lit, sealed], -15, until)).view.command.doubts.map(({ code }) => code)
    expect(doubts(500)).toEqual(['no-core-probe', 'no-air-probe'])
    expect(doubts(980)).toEqual(['one-wall-probe', 'no-air-probe'])
  })
  it('stands through a pause of ten minutes', () => {
    const pause = { ...night, wall: (m: number) => (m < 1000 || m > 1010 ? night.wall!(m) : null) }
    expect(opening(pause, 1060).map(({ state }) => state)).toEqual(['due'])
  })
  it('is taken back once the firebox alone warms at 25 K an hour: the mouth is where air gets in', () => {
    const lights = { ...night, firebox: (m: number) => night.firebox!(m)! + (25 / 60) * Math.max(0, m - 1000) }
    const taken = opening(lights, 1060)[1]
    expect(taken).toMatchObject({ state: 'withdrawn', because: ['firebox-rose'] })
    expect(taken!.min).toBeLessThanOrEqual(1040)
  })
  it('stands through a day that warms the air by 8 K and the firebox, in the sun, by 18', () => {
    const day = (topK: number) => (m: number) => topK * Math.sin((Math.PI / 2) * Math.min(1, Math.max(0, (m - 1000) / 240)))
    const sun = { ...night, outlet: (m: number) => 20 + day(8)(m), firebox: (m: number) => night.firebox!(m)! + day(18)(m) }
    expect(opening(sun, 1240).map(({ state }) => state)).toEqual(['due'])
  })
})

// Charcoal that glows and is given air is a fire within minutes (trade facts 7.3.8, 7.3.10).
describe('a kiln that stands open', () => {
  const acts: [number, Action][] = [
    [1000, { action: 'crack' }],
    [1030, { action: 'open' }],
  ]
  const after = (curves: Curves, given: [number, Action][]) => {
    const { outputs } = play(firing(curves, [lit, sealed, ...given], -15, 1090))
    const told = outputs.filter((o) => o.kind === 'alarm' && o.state === 'unacknowledged')
    return { alarms: alarmsOf(outputs), min: told[0] === undefined ? null : (told[0].at - lightAt) / 60_000 }
  }
  const climbs = (role: 'wall' | 'firebox', fromMin: number): Curves => ({
    ...night,
    [role]: (m: number) => night[role]!(m)! + (36 / 60) * Math.max(0, m - fromMin),
  })
  it.each([
    ['the wall', 'wall', 'with its gap open', 1005, acts.slice(0, 1)],
    ['the wall', 'wall', 'opened', 1035, acts],
    ['the firebox', 'firebox', 'with its gap open', 1005, acts.slice(0, 1)],
    ['the firebox', 'firebox', 'opened', 1035, acts],
  ] as const)(
    'and of which %s (%s) rises %s is told as burning again, at once, and as nothing else',
    (_what, role, _how, fromMin, given) => {
      const { alarms, min } = after(climbs(role, fromMin), [...given])
      expect(alarms).toEqual(['reignition'])
      expect(min).toBeLessThanOrEqual(fromMin + 20)
    },
  )
  it('and whose cold mouth takes on the warmth of the morning is no fire', () => {
    const morning = (m: number): number => 20 + Math.min(12, Math.max(0, m - 1005) / 5)
    const cold: Curves = { ...night, outlet: morning, firebox: (m) => (m < 1000 ? night.firebox!(m) : morning(m)) }
    expect(after(cold, acts).alarms).toEqual([])
  })
  // 850 of 1,000 W/m² on steel that gives off some 20 to 28 W/(m² K) and holds 4.6 kJ/(m² K), the charcoal behind it as much again: 30 to 43 K, 4 to 12 min
  it.each([
    [30, 4],
    [30, 12],
    [42, 8],
  ])('and whose bared wall the sun warms by %d K within some %d min is no fire', (topK, tauMin) => {
    const sun = (m: number): number => (m < 1040 ? 0 : topK * (1 - Math.exp((1040 - m) / tauMin)))
    const inside = (m: number): number => Math.min(3, Math.max(0, m - 1045) / 15)
    const bared = { ...night, wall: (m: number) => night.wall!(m)! + sun(m), firebox: (m: number) => night.firebox!(m)! + inside(m) }
    expect(after(bared, acts).alarms).toEqual([])
  })
  it('and whose wall leaps up over a fire is told: beside its mouth at once, once it is hotter than sun makes it, or after forty minutes in any case', () => {
    const fire = (perH: number) => (m: number) => night.wall!(m)! + (perH / 60) * Math.max(0, m - 1040)
    const mouth = (m: number): number => night.firebox!(m)! + (40 / 60) * Math.max(0, m - 1040)
    expect(after({ ...night, wall: fire(120), firebox: mouth }, acts).min).toBeLessThanOrEqual(1060)
    expect(after({ ...night, wall: fire(180) }, acts).min).toBeLessThanOrEqual(1060)
    expect(after({ ...night, wall: fire(80) }, acts).min).toBeLessThanOrEqual(1080)
  })
})
