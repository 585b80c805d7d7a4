import { expect, test } from 'vitest'
import { defaultLimits, type KilnConfig } from '../../../../server/contract/fold.ts'
import { ensemble } from '../../../../server/domain/estimate/ensemble.ts'
import * as L from '../../../../server/domain/kiln/layout.ts'
import type { EnsembleState } from '../../../../server/domain/estimate/shape.ts'
import type { Evidence, GridReadings } from '../../../../server/domain/estimate/types.ts'

const config: KilnConfig = {
  kiln: 'k',
  name: 'test kiln',
  volumeL: 200,
  cover: 'earth',
  way: 'kept',
  charge: { massKg: 75, moisturePct: 28, pieceMm: 60 },
  roles: {},
  calibration: {},
  limits: defaultLimits,
  worth: { good: 1, tarry: -2, watery: -0.25 },
  altitudeM: 0,
  seed: 5,
}

/** A plain made-up firing: the fire up within 20 minutes, the wall slowly after it, the outlet cool. */
function reading(minute: number): GridReadings {
  const fireboxC = minute < 20 ? 20 + 29 * minute : 600
  const wallC = 20 + 280 * (1 - Math.exp(-minute / 200))
  return { at: minute * 60000, fireboxC, wallC, outletC: 30, smokeC: null, ambientC: 20, coreC: null, bottleKg: null }
}

function run(s: EnsembleState, from: number, to: number, sealedAt = Infinity): EnsembleState {
  for (let grid = from * 6; grid < to * 6; grid++) {
    const minute = grid / 6
    const evidence: Evidence[] =
      minute === 0 ? [{ at: 0, kind: 'lit' }] : minute === sealedAt ? [{ at: minute * 60000, kind: 'sealed' }] : []
    s = ensemble.step(s, { ...reading(minute), at: minute * 60000 + 10000 }, evidence)
  }
  return s
}

test('a thawed state goes on exactly as the one that was frozen, and both fit into 256 kB', () => {
  const first = run(ensemble.start(config), 0, 120)
  const bytes = ensemble.freeze(first)
  expect(bytes.length).toBeLessThanOrEqual(256 * 1024)
  const second = ensemble.thaw(bytes)
  const a = ensemble.freeze(run(first, 120, 150))
  const b = ensemble.freeze(run(second, 120, 150))
  expect(Buffer.compare(Buffer.from(a), Buffer.from(b))).toBe(0)
}, 60000)

test('nothing is said before lighting, and a firing with all probes silent does not break', () => {
  let s = ensemble.start(config)
  expect(ensemble.estimate(s)).toBeNull()
  expect(ensemble.advice(s)).toMatchObject({ startCollecting: false, stopCollecting: false, seal: false, hottestUpperC: null })
  const silent = { fireboxC: null, wallC: null, outletC: null, smokeC: null, ambientC: null, coreC: null, bottleKg: null }
  for (let grid = 0; grid < 400; grid++) s = ensemble.step(s, { ...silent, at: grid * 10000 }, grid === 0 ? [{ at: 0, kind: 'lit' }] : [])
  const estimate = ensemble.estimate(s)
  expect(Number.isFinite(estimate?.smokeC)).toBe(true)
  expect(ensemble.advice(s).startCollecting).toBe(false)
}, 60000)

test('each slice of the drum is a probability, and the shares stay between nothing and all', () => {
  const s = run(ensemble.start(config), 0, 200)
  const estimate = ensemble.estimate(s)
  for (const slice of estimate?.inside ?? []) expect(slice.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9)
  expect(estimate?.inside.length).toBeGreaterThanOrEqual(5)
  expect(estimate?.tarShare).toBeGreaterThanOrEqual(0)
  expect((estimate?.acidShare ?? 2) + (estimate?.tarShare ?? 2)).toBeLessThanOrEqual(1)
}, 60000)

test('an hour after sealing a kiln that was at 300 °C is still bounded as hot', () => {
  const s = run(ensemble.start(config), 0, 260, 200)
  expect(ensemble.advice(s).hottestUpperC).toBeGreaterThan(150)
}, 60000)

test('one wrong number before lighting is not the air', () => {
  let s = ensemble.start(config)
  const cold = (grid: number, outletC: number): void => {
    s = ensemble.step(s, { ...reading(0), at: grid * 10_000, fireboxC: 20, wallC: 20, outletC, ambientC: null }, [])
  }
  for (let grid = 0; grid < 12; grid++) cold(grid, 20)
  cold(12, -45)
  expect(s.airC).toBe(20)
  cold(13, 44)
  expect(s.airC).toBe(20)
})

test('a fire that leaps up leaves no kiln of the model colder than the air, nor without numbers', () => {
  for (const seed of [1, 3, 6, 11]) {
    let s = ensemble.start({ ...config, charge: {}, seed })
    for (let grid = 0; grid < 180; grid++) {
      const minute = grid / 6
      const leaps = { fireboxC: 640 + 18 * minute, wallC: 52 + 12 * minute, outletC: 23, ambientC: null }
      s = ensemble.step(s, { ...reading(minute), ...leaps, at: grid * 10_000 + 10_000 }, grid === 0 ? [{ at: 0, kind: 'lit' }] : [])
      if (s.history.length === 0) continue
      const smokes = Array.from(s.weights, (_, m) => s.members.kilns[m * L.stateLength + L.smokeC] ?? NaN)
      expect(smokes.filter((smoke) => !(smoke >= s.airC))).toEqual([])
      if (s.estimate !== null) expect(s.estimate.smokeC).toBeGreaterThanOrEqual(s.airC)
    }
  }
}, 60000)

test('a smoke probe that falls silent goes on in the members that were in step with it', () => {
  const smoky = (minute: number): number => 20 + 60 * (1 - Math.exp(-minute / 60))
  const cut = (silentFrom: number): number => {
    let s = ensemble.start(config)
    for (let grid = 0; grid < 150 * 6; grid++) {
      const minute = grid / 6
      const smokeC = minute < silentFrom ? smoky(minute) : null
      s = ensemble.step(s, { ...reading(minute), at: minute * 60000 + 10000, smokeC }, grid === 0 ? [{ at: 0, kind: 'lit' }] : [])
    }
    return ensemble.estimate(s)?.smokeC ?? NaN
  }
  const truth = smoky(150)
  expect(Math.abs(cut(120) - truth)).toBeLessThan(6)
  expect(Math.abs(cut(120) - truth)).toBeLessThan(Math.abs(cut(0) - truth))
}, 60000)

test('no spread is called knowledge before the members were weighed by a wall or smoke, nor after these fell silent', () => {
  const narrow = (s: EnsembleState): EnsembleState => ({ ...s, estimate: s.estimate && { ...s.estimate, smokeSd: 1 } })
  let s = run(ensemble.start(config), 0, 10)
  expect(ensemble.advice(narrow(s)).sure).toBe('low')
  s = run(s, 10, 60)
  expect(ensemble.advice(narrow(s)).sure).toBe('high')
  for (let grid = 360; grid < 540; grid++) s = ensemble.step(s, { ...reading(grid / 6), wallC: null }, [])
  expect(ensemble.advice(narrow(s)).sure).toBe('low')
}, 60000)
