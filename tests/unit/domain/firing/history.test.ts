import { describe, expect, it } from 'vitest'
import { emptyHistory, highest, lowest, mean, quantile, slope, write, type History } from '../../../../server/domain/firing/history.ts'

function of(...values: (number | null)[]): History {
  const history = emptyHistory()
  values.forEach((value, i) => write(history, i * 60_000, value))
  return history
}

describe('the minutes of a role', () => {
  it('give the slope of a straight line whatever gaps it has', () => {
    expect(slope(of(0, 1, null, 3, 4, 5), 6)).toBeCloseTo(60, 10)
    expect(slope(of(0, 1, 2, 3, 50, 50), 4, 2)).toBeCloseTo(60, 10)
  })
  it('give none where too little was heard', () => {
    expect(slope(of(1, null, null, 2), 4)).toBeNull()
    expect(mean(of(5, null, null, null), 4)).toBeNull()
    expect(mean(of(), 5)).toBeNull()
  })
  it('give mean, extremes and the nearest rank', () => {
    const some = of(4, 1, 3, 2, 10)
    expect(mean(some, 5)).toBe(4)
    expect([lowest(some, 3), highest(some, 3)]).toEqual([2, 10])
    expect(quantile(some, 5, 0.5)).toBe(3)
  })
  it('keep gaps as gaps, and four hours', () => {
    const history = of(1)
    write(history, 5 * 60_000, 2)
    expect(history.values).toEqual([1, null, null, null, null, 2])
    for (let i = 6; i < 400; i++) write(history, i * 60_000, i)
    expect(history.values).toHaveLength(240)
    write(history, 2000 * 60_000, 7)
    expect(history.values).toEqual([7])
  })
})
