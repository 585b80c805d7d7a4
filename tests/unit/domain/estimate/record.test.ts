import { describe, expect, test } from 'vitest'
import { withRecord } from '../../../../server/domain/estimate/record.ts'

const record = { mean: Math.log(6), sd: 0.35 }

describe('how long earlier firings took to their stop', () => {
  test('changes nothing where none told', () => expect(withRecord([1, 2, 4], null, 3)).toEqual([1, 2, 4]))

  test('is weighed with the range by their precisions (product of two normal distributions)', () => {
    // by hand: range 3 to 7 is 5 +- 1.5604; record 6 h less 1 h gone is 5 +- 2.1
    const [low, middle, high] = withRecord([3, 5, 7], record, 1)
    expect(middle).toBeCloseTo(5, 6)
    const spread = 1 / Math.sqrt(1 / 1.5604 ** 2 + 1 / 2.1 ** 2)
    expect(high - middle).toBeCloseTo(1.2816 * spread, 3)
    expect(middle - low).toBeCloseTo(1.2816 * spread, 3)
  })

  test('pulls towards itself, hardly where the range is narrow, and never before now', () => {
    expect(withRecord([6, 9, 12], record, 0)[1]).toBeLessThan(9)
    expect(withRecord([0.4, 0.5, 0.6], record, 1)[1]).toBeCloseTo(0.5, 1)
    const past = withRecord([0, 0.5, 3], record, 11)
    expect(past[0]).toBeGreaterThanOrEqual(0)
    expect(past[0]).toBeLessThanOrEqual(past[1])
    expect(past[1]).toBeLessThanOrEqual(past[2])
  })
})
