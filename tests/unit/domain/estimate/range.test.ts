import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Hours } from '../../../../server/domain/estimate/learned/horizon.ts'
import { rangeFrom, rangeSignCount, rangeSigns } from '../../../../server/domain/estimate/range.ts'
import { ranges } from '../../../../server/domain/estimate/tables/range.ts'

/** Four parts of the first opinion to six of the second, edges at 0.85 of their distance from the middle. */
const plain = {
  earliest: [0, 0.6, 0.4, -0.51, 0, -0.34, 0, 0],
  likely: [0, 0.6, 0.4, 0, 0, 0, 0, 0],
  latest: [0, 0.6, 0.4, 0, 0.51, 0, 0.34, 0],
}

describe('a range from two opinions', () => {
  it('is what its forms make of them, worked by hand', () => {
    // 0.4 of 2, 4, 8 and 0.6 of 4, 6, 10 is 3.2, 5.2, 9.2; the edges keep 0.85 of their distance from 5.2
    const told = rangeFrom(plain, rangeSigns([2, 4, 8], [4, 6, 10]))
    for (const [i, hour] of [3.5, 5.2, 8.6].entries()) expect(told[i]).toBeCloseTo(hour, 9)
  })

  it('widens with how far the opinions differ, by the last sign', () => {
    const wary = { ...plain, latest: [...plain.latest.slice(0, -1), 0.5] }
    // 4 against 6: half of the two hours more
    expect(rangeFrom(wary, rangeSigns([2, 4, 8], [4, 6, 10]))[2]).toBeCloseTo(9.6, 9)
    expect(rangeFrom(wary, rangeSigns([4, 6, 10], [4, 6, 10]))[2]).toBeCloseTo(rangeFrom(plain, rangeSigns([4, 6, 10], [4, 6, 10]))[2], 9)
  })

  const hours = fc
    .array(fc.double({ min: 0, max: 16, noNaN: true }), { minLength: 3, maxLength: 3 })
    .map(([a = 0, b = 0, c = 0]): Hours => [Math.min(a, b, c), a + b + c - Math.min(a, b, c) - Math.max(a, b, c), Math.max(a, b, c)])

  it.each(Object.entries(ranges))('of the shipped forms is in order and not in the past: %s', (_call, forms) => {
    for (const form of Object.values(forms) as (readonly number[])[]) {
      expect(form).toHaveLength(rangeSignCount)
      expect(form.every(Number.isFinite)).toBe(true)
    }
    fc.assert(
      fc.property(hours, hours, (own, learned) => {
        const [low, middle, high] = rangeFrom(forms, rangeSigns(own, learned))
        return low >= 0 && middle >= low && high >= middle
      }),
    )
  })
})
