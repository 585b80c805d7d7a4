import { expect, test } from 'vitest'
import { freeze, thaw } from '../../../../server/domain/estimate/pack.ts'

test('arrays come back bit for bit with the values around them, NaN, empty and unaligned ones included', () => {
  const state = {
    name: 'Köhler 炭',
    a: new Float64Array([1 / 3, NaN, -0]),
    deep: [{ b: new Float32Array([1.1]), none: null }, new Int32Array(0)],
    word: new Uint32Array([0xdeadbeef]),
  }
  const back = thaw(freeze(state)) as typeof state
  expect(back).toEqual(state)
  expect(Object.is(back.a[2], -0)).toBe(true)
  expect(back.word).toBeInstanceOf(Uint32Array)
})

test('bytes that were cut are refused', () => {
  const bytes = freeze({ a: new Float64Array(4) })
  expect(() => thaw(bytes.slice(0, bytes.length - 1))).toThrow(RangeError)
  expect(() => thaw(bytes.slice(0, 10))).toThrow(RangeError)
})
