import { describe, expect, it } from 'vitest'
import { rangeFrom, rangeSigns } from '../../../../server/domain/estimate/range.ts'
import { fitRanges } from '../../../bench/study/fit-ranges.ts'

// Gneiting and Raftery 2007: the interval score of a fifth outside is least at the tenth and the ninth of ten. An opinion of 3, 5, 7 hours
// about truths spread evenly over 4 to 6 is too wide by far: the tenth and the ninth lie at 4.2 and 5.8.
describe('the fit of ranges', () => {
  const signs = rangeSigns([3, 5, 7], [3, 5, 7])
  const evenly = Array.from({ length: 201 }, (_, i) => ({ call: 'seal' as const, signs, real: 4 + i / 100, weight: 1 / 201 }))

  it('finds the tenth, the middle and the ninth of ten', () => {
    const [low, middle, high] = rangeFrom(fitRanges(evenly), signs)
    expect(low).toBeGreaterThan(4)
    expect(low).toBeLessThan(4.4)
    expect(middle).toBeCloseTo(5, 1)
    expect(high).toBeGreaterThan(5.6)
    expect(high).toBeLessThan(6)
  })

  it('weighs what it is asked: truths that count nothing change nothing', () => {
    const strangers = evenly.map((one) => ({ ...one, real: one.real + 1.5, weight: 0 }))
    const [alone, beside] = [rangeFrom(fitRanges(evenly), signs), rangeFrom(fitRanges([...evenly, ...strangers]), signs)]
    alone.forEach((hour, i) => expect(beside[i]).toBeCloseTo(hour, 6))
  })
})
