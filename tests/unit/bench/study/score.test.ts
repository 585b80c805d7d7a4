import { describe, expect, it } from 'vitest'
import type { FiringRows } from '../../../bench/study/rows.ts'
import { aheadOf, capturedIn, intervalScore, lostBy, windowsOf } from '../../../bench/study/score.ts'

/** An hour of water, two of good, one of tar, a kilogram an hour. */
const minutes = Array.from({ length: 240 }, (_, m): [number, number, number] =>
  m < 60 ? [0, 1 / 60, 0] : m < 180 ? [1 / 60, 0, 0] : [0, 0, 1 / 60],
)
const rows: FiringRows = {
  name: 'one',
  smoke: false,
  kind: 'ordinary',
  minutes,
  bestValue: 2,
  start: 1,
  stop: 3,
  seal: 3.9,
  sealed: 4,
  hours: [],
  flow: [],
  smokeC: [],
  x: [],
  ranges: [],
}

describe('the score of the study', () => {
  it('opens and shuts with the calls, and opens again when a stop is withdrawn', () => {
    const calls = [
      { call: 'start-collecting', state: 'due', at: 1 },
      { call: 'stop-collecting', state: 'due', at: 2 },
      { call: 'stop-collecting', state: 'withdrawn', at: 2.5 },
      { call: 'seal', state: 'due', at: 3 },
    ] as const
    expect(windowsOf([...calls])).toEqual([
      [1, 2],
      [2.5, 3],
    ])
  })

  it('is one for the best window, and takes two for tar and a quarter for water', () => {
    expect(capturedIn(rows, [[1, 3]])).toBeCloseTo(1, 9)
    expect(capturedIn(rows, [[0, 3]])).toBeCloseTo((2 - 0.25) / 2, 9)
    expect(capturedIn(rows, [[1, 3.5]])).toBeCloseTo((2 - 1) / 2, 9)
    expect(capturedIn({ minutes, bestValue: 0 }, [[0, 1]])).toBe(-1)
    expect(capturedIn({ minutes, bestValue: 0 }, [])).toBe(1)
  })

  it('parts what was lost by its causes, to the last gram', () => {
    const lost = lostBy(rows, [[0.5, 3.25]])
    expect(lost['start early']).toBeCloseTo(0.125 / 2, 9)
    expect(lost['stop late']).toBeCloseTo(0.25, 9)
    expect(Object.values(lost).reduce((a, b) => a + b, 0)).toBeCloseTo(1 - capturedIn(rows, [[0.5, 3.25]]), 9)
    expect(lostBy(rows, [])).toEqual({ 'never started': 1 })
  })

  it('scores a range by its width and ten times the miss: formula 43 of Gneiting and Raftery 2007 with a fifth outside', () => {
    expect(intervalScore(2, 4, 3)).toBe(120)
    expect(intervalScore(2, 4, 4.5)).toBeCloseTo(120 + (2 / 0.2) * 30, 9)
    expect(intervalScore(0, 48, 1)).toBe(1440)
  })

  it('counts only what was told before the call was due', () => {
    const told = (at: number) => ({ call: 'stop-collecting' as const, at, earliest: at, latest: at + 1 })
    expect(aheadOf({ rows, forecasts: [told(1), told(2.9), told(3.1)] })).toHaveLength(2)
  })
})
