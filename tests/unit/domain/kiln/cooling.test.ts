import { describe, expect, test } from 'vitest'
import { coolingCount, coolingState, coolingStepH, coolingValue, coolStep, sealAt } from '../../../../server/domain/kiln/cooling.ts'

const values = (): Float64Array => Float64Array.from({ length: coolingCount }, (_, i) => coolingValue(i, 0))
const at = (x: Float64Array, i: number): number => x[i] ?? NaN

describe('the sealed kiln', () => {
  test('heat that leaves charcoal, drum and earth is heat that reached the air, to 0.1 %', () => {
    const v = values()
    const x = new Float64Array(coolingState)
    sealAt(x, 0, v, 0, 300, 20)
    const heat = (): number => at(x, 0) + at(v, 1) * at(x, 1) + at(v, 2) * at(x, 2)
    const before = heat()
    let out = 0
    for (let k = 0; k < 150; k++) {
      coolStep(x, 0, v, 0, 20, 0)
      out += coolingStepH * at(v, 4) * (at(x, 2) - 20 - at(v, 9))
    }
    expect(Math.abs(before - heat() - out) / before).toBeLessThan(0.001)
  })

  test('cools without ever swinging below the air, and the hottest part stays above the wall', () => {
    const v = values()
    const x = new Float64Array(coolingState)
    sealAt(x, 0, v, 0, 350, 15)
    let last = Infinity
    for (let k = 0; k < 400; k++) {
      coolStep(x, 0, v, 0, 15, 0)
      const hottest = Math.max(at(x, 0), at(x, 3))
      expect(hottest).toBeLessThanOrEqual(last)
      expect(hottest).toBeGreaterThan(at(x, 1))
      expect(at(x, 1)).toBeGreaterThan(15)
      last = hottest
    }
  })

  test('a leak keeps it hot: the drum never cools below what the air that gets in burns', () => {
    const v = values()
    const [tight, leaky] = [new Float64Array(coolingState), new Float64Array(coolingState)]
    sealAt(tight, 0, v, 0, 300, 20)
    sealAt(leaky, 0, v, 0, 300, 20)
    for (let k = 0; k < 144; k++) {
      coolStep(tight, 0, v, 0, 20, 0)
      coolStep(leaky, 0, v, 0, 20, 1)
    }
    expect(at(leaky, 3)).toBeGreaterThan(at(tight, 3) + 15)
  })
})
