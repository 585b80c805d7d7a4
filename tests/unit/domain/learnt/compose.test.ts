import { describe, expect, test } from 'vitest'
import type { KeptLesson } from '../../../../server/contract/learnt.ts'
import { priorFrom, together } from '../../../../server/domain/learnt/compose.ts'

const burn = (firing: string, at: number, mean: number, sd: number): KeptLesson => ({
  firing,
  at,
  lesson: { part: 'burn', unknowns: { draught: { mean, sd } } },
})

describe('the lessons of the last firings of a kiln', () => {
  test('none is no prior', () => {
    expect(priorFrom([])).toBeUndefined()
  })

  test('one is taken along wider than it was: it says nothing of the spread from day to day', () => {
    const prior = priorFrom([burn('a', 1, 0.6, 0.3)])
    expect(prior?.firings).toBe(1)
    expect(prior?.unknowns?.['draught']?.mean).toBe(0.6)
    expect(prior?.unknowns?.['draught']?.sd).toBeGreaterThan(0.4)
  })

  test('the newest weighs most, in whatever order they are read', () => {
    const kept = [burn('a', 1, -1, 0.3), burn('c', 3, 1, 0.3), burn('b', 2, 0, 0.3)]
    const mean = priorFrom(kept)?.unknowns?.['draught']?.mean ?? NaN
    // (1 * 1 + 0.8 * 0 - 0.64 * 1) / 2.44, by hand
    expect(mean).toBeCloseTo(0.148, 3)
    expect(priorFrom(kept.toReversed())).toEqual(priorFrom(kept))
  })

  test('a firing that teaches a part again is counted once, with what it taught last', () => {
    const prior = priorFrom([burn('a', 1, -1, 0.3), burn('a', 2, 1, 0.3)])
    expect(prior).toEqual(priorFrom([burn('a', 2, 1, 0.3)]))
  })

  test('firings that agree are narrower than those that do not, never under the floor and never over the wide prior', () => {
    const agree = together([0.5, 0.52, 0.48, 0.5].map((mean) => ({ mean, sd: 0.2 }))).sd
    const differ = together([1.4, -0.9, 1.2, -1].map((mean) => ({ mean, sd: 0.2 }))).sd
    expect(agree).toBeLessThan(differ)
    expect(together(Array.from({ length: 6 }, () => ({ mean: 0.5, sd: 0.01 }))).sd).toBeGreaterThanOrEqual(0.25 - 1e-9)
    expect(differ).toBeLessThanOrEqual(1)
  })

  test('only the last six firings count', () => {
    const six = [1, 2, 3, 4, 5, 6].map((at) => burn(`f${at}`, at, 0.2, 0.3))
    expect(priorFrom([...six, burn('f0', 0, 9, 0.3)])?.unknowns).toEqual(priorFrom(six)?.unknowns)
  })

  test('where the wall stood at a stop that a smoke probe told is taken along, with the spread from day to day', () => {
    const stop = (firing: string, at: number, wallC: number): KeptLesson => ({ firing, at, lesson: { part: 'stop', wallC } })
    const one = priorFrom([stop('a', 1, 250)])
    expect(one).toMatchObject({ firings: 1, stop: { mean: 250 } })
    // by hand: 30 K from day to day and 30 of the call itself, and 30 to the day that comes: sqrt(3 * 900)
    expect(one?.stop?.sd).toBeCloseTo(51.96, 1)
    expect(one?.unknowns).toBeUndefined()
    const two = priorFrom([stop('a', 1, 250), stop('b', 2, 210)])
    // (210 + 0.8 * 250) / 1.8, by hand
    expect(two?.stop?.mean).toBeCloseTo(227.78, 1)
    expect(two?.stop?.sd).toBeLessThan(one?.stop?.sd ?? 0)
  })

  test('the hours to the stop are taken along as logarithms, wider for one firing than for several', () => {
    const hours = (firing: string, at: number, toStop: number): KeptLesson => ({ firing, at, lesson: { part: 'hours', toStop } })
    const one = priorFrom([hours('a', 1, 6)])?.hours
    expect(one?.mean).toBeCloseTo(Math.log(6), 3)
    // 0.35 from firing to firing, twice, by hand
    expect(one?.sd).toBeCloseTo(0.495, 3)
    const two = priorFrom([hours('a', 1, 6), hours('b', 2, 4)])?.hours
    expect(two?.mean).toBeCloseTo((Math.log(4) + 0.8 * Math.log(6)) / 1.8, 3)
    expect(two?.sd).toBeLessThan(one?.sd ?? 0)
  })

  test('nights are taken along as they fell, newest first, the last six, and without a burn too', () => {
    const night = (firing: string, at: number): KeptLesson => ({
      firing,
      at,
      lesson: { part: 'night', conditions: [1, at], warmthK: [180, null] },
    })
    const kept = [1, 2, 3, 4, 5, 6, 7].map((at) => night(`f${at}`, at))
    expect(priorFrom(kept)?.night?.map(({ conditions }) => conditions[1])).toEqual([7, 6, 5, 4, 3, 2])
    expect(priorFrom(kept)?.unknowns).toBeUndefined()
    expect(priorFrom([burn('a', 1, 0.6, 0.3)])?.night).toBeUndefined()
  })
})
