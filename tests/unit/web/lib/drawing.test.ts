import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { blindSpans, unwatchedSpans } from '../../../../web/src/lib/chart/around.ts'
import { besideEnd, fireRange, mainRange, spread, ticksOf } from '../../../../web/src/lib/chart/scales.ts'
import { namedRuns, pictureOf } from '../../../../web/src/lib/kiln/picture.ts'
import { sparkPath } from '../../../../web/src/views/shelf/spark.ts'
import { minute, noon } from '../../../browser/fake/kiln.ts'
import { scenes } from '../../../browser/fake/scenes.ts'

describe('names at the ends of lines', () => {
  test('never touch, and stay inside, while there is room', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { minLength: 1, maxLength: 6 }), (wanted) => {
        const placed = [...spread(wanted, 17, 8, 192)].sort((a, b) => a - b)
        for (let i = 1; i < placed.length; i += 1) expect((placed[i] ?? 0) - (placed[i - 1] ?? 0)).toBeGreaterThan(16.9)
        expect(Math.min(...placed)).toBeGreaterThanOrEqual(7.9)
        expect(Math.max(...placed)).toBeLessThanOrEqual(192.1)
      }),
    )
  })
  test('stand after the end, and before it where the scale of the firebox would be under them', () => {
    expect(besideEnd(100, 40, 8, 200)).toBe(108)
    expect(besideEnd(160, 40, 8, 200)).toBe(112)
  })
})

test('the firebox has the upper fifth for itself, the others the lower three quarters', () => {
  const share = ([low, high]: [number, number], value: number): number => (value - low) / (high - low)
  expect(share(mainRange(400), 400)).toBeCloseTo(0.74, 9)
  expect(share(fireRange(900), 0)).toBeCloseTo(0.8, 9)
  expect(share(fireRange(900), 900)).toBe(1)
})

test('ticks are round in the unit that is read', () => {
  expect(ticksOf(400, 'C')).toEqual([100, 200, 300, 400])
  expect(ticksOf(400, 'F').map((celsius) => Math.round(celsius * 1.8 + 32))).toEqual([200, 400, 600])
})

test('inside the drum only what is likely is named', () => {
  expect(
    namedRuns([
      [0.9, 0.1, 0, 0],
      [0.5, 0.5, 0, 0],
      [0, 0, 0, 1],
      [0, 0, 0, 1],
    ]),
  ).toEqual([
    { state: 0, from: 0, to: 0.25 },
    { state: 3, from: 0.5, to: 1 },
  ])
})

test('a gap in a small curve is a gap', () => {
  expect(sparkPath([0, 1, 2, 3], [0, null, 0, 0], { width: 30, height: 10, mostC: 100 })).toBe('M0.0 10.0M20.0 10.0L30.0 10.0')
})

test('a sealed kiln shows no smoke, no flames and no drip', () => {
  expect(pictureOf(scenes.night, noon)).toMatchObject({ smoke: 'none', drip: 'none', flames: 0, sealed: true })
})

test('what was seen stands before what is likely, and goes stale', () => {
  const view = structuredClone(scenes.waiting)
  view.firing.acts.push({ id: 'o', at: noon, doneAt: noon - 10 * minute, act: { action: 'observe', smoke: 'yellow' } })
  expect(pictureOf(view, noon).smoke).toBe('yellow')
  expect(pictureOf(view, noon + 60 * minute).smoke).toBe('white')
})

describe('blind time', () => {
  const one = (values: (number | null)[], more: (number | null)[] = values.map(() => null)) => ({
    t: values.map((_, index) => index * minute),
    series: [
      { key: 'wall' as const, values },
      { key: 'outlet' as const, values: more },
    ],
  })
  test('is from the last number before to the first after', () => {
    expect(blindSpans(one([1, 2, null, null, 5]), 4 * minute)).toEqual([{ from: minute, to: 4 * minute }])
  })
  test('is none while any probe is heard', () => {
    expect(blindSpans(one([1, null, null, null, 5], [null, 2, 2, 2, null]), 4 * minute)).toEqual([])
  })
  test('lasts until now when nothing came back', () => {
    expect(blindSpans(one([1, 2, null]), 9 * minute)).toEqual([{ from: minute, to: 9 * minute }])
  })
})

test('when nobody watched is from the alarm to its end, however often it was told or taken note of meanwhile', () => {
  const mark = (minutes: number, state: string, code = 'nobody-watching') => ({ t: minutes * minute, kind: 'alarm' as const, code, state })
  const told = [
    ...[mark(1, 'unacknowledged'), mark(2, 'acknowledged'), mark(3, 'unacknowledged', 'co-high'), mark(4, 'unacknowledged')],
    ...[mark(5, 'normal'), mark(6, 'normal'), mark(7, 'unacknowledged')],
  ]
  const first = { from: minute, to: 5 * minute }
  expect(unwatchedSpans({ marks: told, to: 8 * minute }, 9 * minute)).toEqual([first, { from: 7 * minute, to: 9 * minute }])
  expect(unwatchedSpans({ marks: told, to: 8 * minute }, null)).toEqual([first, { from: 7 * minute, to: 8 * minute }])
})
