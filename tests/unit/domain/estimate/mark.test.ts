import { describe, expect, test } from 'vitest'
import { markWorth } from '../../../../server/domain/estimate/mark.ts'

const worth = { good: 1, tarry: -2, watery: -0.25 }
const mark = { mean: 240, sd: 40 }

describe('the wall at which earlier firings had to stop', () => {
  test('says nothing where none is known', () => expect(markWorth(null, 300, worth)).toBe(0))

  test('holds a stop back while the wall is cooler, speaks for one when it is hotter', () => {
    const at = (wallC: number): number => markWorth(mark, wallC, worth)
    expect(at(100)).toBeCloseTo(0.25, 2)
    expect(at(400)).toBeCloseTo(-1.5, 2)
    // as likely past as not: half of good and tar-laden each, three quarters of it
    expect(at(240)).toBeCloseTo(-0.375, 9)
    // one spread over it 84.1 % are past (table of the normal distribution)
    expect(at(280)).toBeCloseTo(0.75 * (1 - 3 * 0.841), 1)
    for (let c = 100; c < 400; c += 10) expect(at(c + 10)).toBeLessThan(at(c))
  })

  test('forces a stop far over the mark, and holds none back against two opinions that see tar', () => {
    const stopBelow = -0.34
    expect(1 + markWorth(mark, 240, worth)).toBeGreaterThan(stopBelow)
    expect(1 + markWorth(mark, 340, worth)).toBeLessThan(stopBelow)
    expect(-0.6 + markWorth(mark, 20, worth)).toBeLessThan(stopBelow)
  })
})
