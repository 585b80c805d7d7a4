import { describe, expect, test } from 'vitest'
import { Chance } from '../../../../server/simulator/chance.ts'
import { meanWeights, positive, spreadOf, type Row } from '../../../bench/sealed/spread.ts'
import { kinWorlds, nightOf } from '../../../bench/sealed/kin.ts'

describe('means and spreads of nights', () => {
  test('a line is found again, and one row far off hardly moves it', () => {
    const chance = new Chance('line')
    const x = Array.from({ length: 4000 }, () => [1, chance.between(-1, 1)])
    const y = x.map(([, v]) => 0.5 + 2 * (v ?? 0) + 0.1 * chance.normal())
    y[7] = 40
    const [base, slope] = meanWeights(x, y, new Array<number>(4000).fill(1))
    expect(base).toBeCloseTo(0.5, 1)
    expect(slope).toBeCloseTo(2, 1)
  })

  test('two columns that go together are found to, through gaps', () => {
    const chance = new Chance('spread')
    const rows = Array.from({ length: 3000 }, (): Row => {
      const both = chance.normal()
      const values = [both, 0.6 * both + 0.8 * chance.normal(), chance.often(0.5) ? NaN : 0.5 * chance.normal()]
      return { values, noise: [0, 0, 0], weight: 1 }
    })
    const spread = spreadOf(rows)
    // by hand: correlation 0.6, and a quarter of the square for the third
    const [a, b, c] = [spread[0]?.[0] ?? NaN, spread[1]?.[1] ?? NaN, spread[2]?.[2] ?? NaN]
    expect((spread[0]?.[1] ?? NaN) / Math.sqrt(a * b)).toBeCloseTo(0.6, 1)
    expect(c / a).toBeCloseTo(0.25, 1)
    expect(b / a).toBeCloseTo(1, 1)
  })

  test('a matrix with a negative part becomes the nearest without one', () => {
    // eigenvalues 3 and -1 along (1 1) and (1 -1), by hand: what is left is 1.5 everywhere
    for (const row of positive([[1, 2], [2, 1]], 0)) for (const v of row) expect(v).toBeCloseTo(1.5, 9) // prettier-ignore
  })
})

test('another day of a drum has another fire, charge and weather, and the same number gives the same night', () => {
  const drum = kinWorlds.indexOf('drum')
  const [a, again, other] = [nightOf(drum, 0, 'tight'), nightOf(drum, 0, 'tight'), nightOf(drum, 1, 'tight')]
  expect(again.course.wall).toEqual(a.course.wall)
  expect(other.course.litH).not.toBe(a.course.litH)
  expect(other.readings.ambient === null).toBe(a.readings.ambient === null)
})
