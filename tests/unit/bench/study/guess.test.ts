import { describe, expect, it } from 'vitest'
import { compared, forecastLines } from '../../../bench/study/guess.ts'
import { type Ahead, intervalScore } from '../../../bench/study/score.ts'

// Scores are those of Gneiting and Raftery 2007; the comparisons below are worked by trying every constant.

const told = (firing: string, real: number, at = 0): Ahead => ({ firing, call: 'seal', at, earliest: 0, latest: 1, real })
const kilns = [3, 4, 5, 6, 12].map((real) => told(`kiln ${real}`, real))

describe('forecasts beside a constant guess', () => {
  it('finds the best constant guess, which nothing constant beats', () => {
    const { firings } = compared(kilns)
    const best = firings.reduce((sum, { inHindsight }) => sum + inHindsight, 0)
    for (let from = 0; from <= 12; from += 0.5)
      for (let to = from; to <= 12; to += 0.5)
        expect(best).toBeLessThanOrEqual(kilns.reduce((sum, { real }) => sum + intervalScore(from, to, real), 0) + 1e-9)
  })

  it('lets a firing say nothing about its own constant from the others', () => {
    const late = compared(kilns).firings.find(({ firing }) => firing === 'kiln 12')
    // the others span 3 to 6 h: twelve lies six hours outside, which is capped at a day
    expect(late?.fromOthers).toBe(1440)
    const [alike] = compared([told('a', 5), told('b', 5), told('c', 5)]).firings
    expect(alike?.fromOthers).toBe(0)
  })

  it('weighs firings alike, however often each was told', () => {
    const often = Array.from({ length: 90 }, () => told('often', 9))
    const { constants } = compared([...often, told('a', 4), told('b', 4), told('c', 4)])
    const { constants: once } = compared([told('often', 9), told('a', 4), told('b', 4), told('c', 4)])
    expect(constants).toEqual(once)
  })

  it('tells no constant for what has passed', () => {
    const [one] = compared([told('late', 8, 7.5), told('early', 1)]).firings
    // from 1 to 1 h of the other firing, told at 7.5 h, stands at 7.5 h
    expect(one?.fromOthers).toBe(intervalScore(7.5, 7.5, 8))
  })

  it('prints the mean and the median over firings with the share of each constant', () => {
    const lines = forecastLines(kilns)
    expect(lines).toHaveLength(4)
    expect(lines.at(-1)).toMatch(/^all, median over firings +5 +0 %/)
  })
})
