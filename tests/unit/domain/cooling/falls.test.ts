import { describe, expect, test } from 'vitest'
import type { Fallen } from '../../../../server/contract/learnt.ts'
import { conditionsOf, edges, stretchesOf } from '../../../../server/domain/cooling/falls.ts'
import { leakZ } from '../../../../server/domain/cooling/leak-z.ts'
import { nightLesson, stoodOpen } from '../../../../server/domain/cooling/lesson.ts'
import { dot, solverOf } from '../../../../server/domain/cooling/matrix.ts'
import { startCooling } from '../../../../server/domain/cooling/state.ts'
import { nightSpread, tightMeans } from '../../../../server/domain/cooling/tables/tight-nights.ts'
import { tightNight } from '../../../../server/domain/cooling/tight.ts'

const before = { hourShare: 0.97, threeHoursShare: 0.9, fireC: 620, smokeC: null, burntH: 9, woodKg: null, coldKnown: true }
const firstK = 180
const conditions = conditionsOf(before, firstK)

/** A night that falls by these rates, 1/h: exact integrals of its stretches. */
function fallen(perH: (stretch: number) => number, until = 96): Fallen {
  const warmthK = [firstK]
  for (let at = 0; (edges[at + 1] ?? Infinity) <= until; at++) {
    const hours = ((edges[at + 1] ?? 0) - (edges[at] ?? 0)) / 6
    warmthK.push((warmthK[at] ?? 0) * Math.exp(-perH(at) * hours))
  }
  return { conditions, warmthK }
}

/** As the middle of tight nights falls, slower by a share from a stretch on. */
const usual = (slower = 0, from = 0) => fallen((at) => Math.exp(dot(tightMeans[at] ?? [], conditions)) * (at >= from ? 1 - slower : 1), 60)

describe('the fall of a night beside tight ones', () => {
  test('an equation is solved: Cholesky’s usual worked example (from memory)', () => {
    // (4 12 -16; 12 37 -43; -16 -43 98) x = (1 2 3), by hand
    const x = solverOf([[4, 12, -16], [12, 37, -43], [-16, -43, 98]])([1, 2, 3]) // prettier-ignore
    expect(x[0]).toBeCloseTo(28.583, 3)
    expect(x[1]).toBeCloseTo(-7.667, 3)
    expect(x[2]).toBeCloseTo(1.333, 3)
  })

  test('what falls as one exponential has one rate in every stretch (Newton’s law of cooling)', () => {
    for (const { logPerH } of stretchesOf(fallen(() => 0.13))) expect(Math.exp(logPerH)).toBeCloseTo(0.13, 9)
  })

  test('near the air, and beside a gap, a stretch tells nothing', () => {
    const night = { conditions, warmthK: [180, null, 150, 140, 17, 15] }
    expect(stretchesOf(night).map(({ at }) => at)).toEqual([2])
  })

  test('one that falls as tight ones do, or faster, lies no way towards a fire', () => {
    const tight = tightNight(conditions, [])
    expect(leakZ(usual(), tight)).toBeCloseTo(0, 6)
    expect(leakZ(usual(-0.1), tight)).toBe(0)
  })

  test('one that flattens lies the farther towards it the more it does', () => {
    const tight = tightNight(conditions, [])
    const far = [0.1, 0.3, 0.6].map((slower) => leakZ(usual(slower, 6), tight) ?? 0)
    expect(far[0]).toBeGreaterThan(0)
    expect(far[1]).toBeGreaterThan(far[0] ?? 0)
    expect(far[2]).toBeGreaterThan(far[1] ?? 0)
  })

  test('nothing is said in the first hours, nor where the newest stretch tells nothing', () => {
    const tight = tightNight(conditions, [])
    expect(leakZ({ conditions, warmthK: [180, 160, 145] }, tight)).toBeNull()
    const gap = usual()
    expect(leakZ({ conditions, warmthK: [...gap.warmthK, null] }, tight)).toBeNull()
  })

  test('nights behind it move what is expected towards them and narrow it, by less with each', () => {
    const slow = usual(0.2)
    const spreadAt = (n: number): number => tightNight(conditions, new Array<Fallen>(n).fill(slow)).spread[6]?.[6] ?? NaN
    const shiftAt = (n: number): number =>
      (tightNight(conditions, new Array<Fallen>(n).fill(slow)).means[6] ?? NaN) - dot(tightMeans[6] ?? [], conditions)
    expect(shiftAt(1)).toBeLessThan(0)
    expect(shiftAt(4)).toBeLessThan(shiftAt(1))
    expect(shiftAt(4)).toBeGreaterThan(Math.log(0.8))
    expect(spreadAt(0) - spreadAt(1)).toBeGreaterThan(spreadAt(1) - spreadAt(2))
    // the nights of one kiln differ however many are known
    expect(spreadAt(6)).toBeGreaterThan(nightSpread[6]?.[6] ?? NaN)
  })

  test('a kiln that always fell slowly is not told as one that leaks, and one that never did sooner', () => {
    const today = usual(0.25)
    const z = (behind: readonly Fallen[]): number => leakZ(today, tightNight(conditions, behind)) ?? NaN
    expect(z([usual(0.25), usual(0.25)])).toBeLessThan(z([]))
    expect(z([usual(), usual()])).toBeGreaterThan(z([]))
  })
})

describe('what a night leaves to the next', () => {
  const due = { due: true, because: [], unless: [] }
  const cooled = () => Object.assign(startCooling(0), { firstK, before, warmthK: [...usual().warmthK] })
  const night = (cooling: ReturnType<typeof cooled>, open = due) => ({ cooling, open, openNotBefore: null })

  test('how it fell, once the trial opening is called or it was opened and stayed quiet', () => {
    expect(nightLesson(night(cooled()), false)).toMatchObject({ part: 'night', warmthK: usual().warmthK })
    expect(nightLesson(night(cooled(), { ...due, due: false }), false)).toBeNull()
    expect(nightLesson(night(cooled(), { ...due, due: false }), true)).not.toBeNull()
  })

  test('it counts as opened only ten minutes after', () => {
    const opened = { since: 1_000_000, lows: {} }
    expect(stoodOpen(night(Object.assign(cooled(), { opened })), 1_000_000 + 599_000)).toBe(false)
    expect(stoodOpen(night(Object.assign(cooled(), { opened })), 1_000_000 + 600_000)).toBe(true)
    expect(stoodOpen(night(cooled()), 9e9)).toBe(false)
  })

  test.each([
    ['was told', { told: true }],
    ['came back', { hasRelit: [{ code: 'wall-rose' }] }],
    ['glows open', { burnsOpen: [{ code: 'wall-rose' }] }],
    ['its probe was off', { wallOff: [{ code: 'wall-fell-off' }] }],
    ['lay far towards a fire', { mostLeakZ: 2.6 }],
  ])('nothing where it %s', (_, what) => {
    expect(nightLesson(night(Object.assign(cooled(), what)), true)).toBeNull()
  })
})
