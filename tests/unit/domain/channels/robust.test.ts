import { describe, expect, it } from 'vitest'
import { hampelOutliers, median, robustScale, theilSen } from '../../../../server/domain/channels/robust.ts'
import { smooth } from '../../../../server/domain/channels/smooth.ts'

describe('median', () => {
  it('is the middle value, or the mean of the two middle ones', () => {
    expect(median([3, 1, 2])).toBe(2)
    expect(median([4, 1, 3, 2])).toBe(2.5)
    expect(median([])).toBeNaN()
  })
})

describe('Hampel (instrument facts 4)', () => {
  it('finds the one outlier of the vector', () => {
    const values = [20, 20.25, 20.5, 20.5, 20.75, 85, 21, 21.25, 21.25, 21.5, 21.5, 21.75]
    expect(hampelOutliers(values, 3, 3, 0.25)).toEqual([5])
    const { middle, scale } = robustScale(values.slice(2, 9), 0)
    expect(middle).toBe(21)
    expect(scale).toBeCloseTo(0.3707, 4)
  })

  it('does not flag one step of the converter when the scale is floored at it, and flags it when it is not', () => {
    const values = [25, 25, 25, 25, 25, 25.25, 25, 25, 25, 25]
    expect(hampelOutliers(values, 3, 3, 0)).toEqual([5])
    expect(hampelOutliers(values, 3, 3, 0.25)).toEqual([])
  })

  it('with a limit of 0 is the median filter: everything but the medians is off', () => {
    expect(hampelOutliers([1, 5, 2], 1, 0, 1)).toEqual([0, 1, 2])
  })
})

describe('Theil-Sen (instrument facts 4, vector of ml-regression-theil-sen)', () => {
  it('finds slope 4 and intercept 6 in spite of the outlier', () => {
    const line = theilSen([1, 2, 3, 4, 10, 12, 18], [10, 14, 180, 22, 46, 54, 78], 0)
    expect(line?.slope).toBeCloseTo(4, 12)
    expect(line?.intercept).toBeCloseTo(6, 12)
    expect(line?.slopeSd).toBeCloseTo(0, 9)
  })

  it('skips pairs of equal x and needs three points', () => {
    expect(theilSen([1, 1, 1], [1, 2, 3], 0)).toBeNull()
    expect(theilSen([1, 2], [1, 2], 0)).toBeNull()
    expect(theilSen([1, 1, 2, 3], [2, 2, 4, 6], 0)?.slope).toBeCloseTo(2, 12)
  })

  it('never claims a scatter below the floor: the sd of a least-squares slope is s/dt·√(12/(N(N²-1))), 0.0598 for 15 points (instrument facts 4)', () => {
    const x = Array.from({ length: 15 }, (_, i) => i)
    const line = theilSen(x, x, 1)
    expect(line?.scatter).toBe(1)
    expect(line?.slopeSd).toBeCloseTo(1.05 * 0.0598, 3)
  })
})

describe('exponential smoothing at irregular times (instrument facts 4)', () => {
  it('has the published weights', () => {
    expect(smooth(0, 1, 1, 10)).toBeCloseTo(0.0951626, 7)
    expect(smooth(0, 1, 5, 30)).toBeCloseTo(0.1535183, 7)
  })

  it('follows the vector with tau 10', () => {
    const times = [0, 1, 2, 4, 9, 10]
    const expected = [20, 20.9516, 21.8127, 23.2968, 25.9343, 26.3212]
    let value = 20
    for (let i = 1; i < times.length; i++) {
      value = smooth(value, 30, (times[i] ?? 0) - (times[i - 1] ?? 0), 10)
      expect(value).toBeCloseTo(expected[i] ?? NaN, 4)
    }
    expect(value).toBeCloseTo(30 - 10 / Math.E, 10)
  })
})
