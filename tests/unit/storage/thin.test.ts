import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { grainOf, thin } from '../../../server/storage/thin.ts'

const second = 1000
const points = (values: (number | null)[], stepMs = 5 * second) => values.map((value, index) => grainOf(index * stepMs, value))

describe('thinning', () => {
  it('keeps minimum and maximum of each bucket, in order of time', () => {
    expect(thin(points([1, 5, 2, 3, 9, 0, 4, 4]), 0, 20 * second)).toEqual({ t: [0, 5000, 20_000, 25_000], value: [1, 5, 9, 0] })
  })

  it('never loses the least or the greatest, never invents a value, never goes back in time', () => {
    fc.assert(
      fc.property(
        fc.array(fc.option(fc.integer({ min: -50, max: 900 }), { nil: null }), { minLength: 1 }),
        fc.integer({ min: 1, max: 300 }),
        (values, widthS) => {
          const { t, value } = thin(points(values), 0, widthS * second)
          const heard = values.filter((each) => each !== null)
          const kept = value.filter((each) => each !== null)
          expect(Math.min(...kept)).toBe(Math.min(...heard))
          expect(Math.max(...kept)).toBe(Math.max(...heard))
          expect(t.every((at, index) => index === 0 || at > (t[index - 1] ?? 0))).toBe(true)
          expect(t.every((at, index) => value[index] === values[at / 5000])).toBe(true)
          expect(value.includes(null)).toBe(values.includes(null))
        },
      ),
    )
  })

  it('breaks the line after max(60 s, 6 periods) of silence (wire format, rule 7)', () => {
    const at = (seconds: number[]) =>
      thin(
        seconds.map((s) => grainOf(s * second, 1)),
        0,
        10 * second,
      ).value.includes(null)
    expect(at([0, 5, 10, 69, 74])).toBe(false)
    expect(at([0, 5, 10, 71, 76])).toBe(true)
    expect(at([0, 30, 60, 90, 269])).toBe(false)
    expect(at([0, 30, 60, 90, 271])).toBe(true)
  })
})
