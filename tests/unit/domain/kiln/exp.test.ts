import { expect, test } from 'vitest'
import { exp } from '../../../../server/domain/kiln/exp.ts'

test('the exponential is that of the machine over all that a kiln can ask for', () => {
  // the series to two units in the last place, and what rounding `x` times a constant costs
  for (let x = -60; x <= 60; x += 0.0137) expect(Math.abs(exp(x) / Math.exp(x) - 1)).toBeLessThan(5e-16 + Math.abs(x) * 2 ** -52)
  expect(exp(0)).toBe(1)
  expect(exp(-1e9)).toBeLessThan(1e-300)
  expect(exp(NaN)).toBeNaN()
})
