import { expect, test } from 'vitest'
import { emptyStandIn, hear, standsIn } from '../../../../server/domain/estimate/stand-in.ts'

const heard = (beats: number, overK: number) => {
  const standIn = emptyStandIn()
  for (let k = 0; k < beats; k++) hear(standIn, 80 + overK, 80)
  return standIn
}

test('a probe that was heard for less than an hour leaves nobody in step with it', () => {
  expect(standsIn(heard(29, 5), 90)).toBeNaN()
  expect(standsIn(heard(30, 5), 90)).toBeCloseTo(95, 9)
  expect(standsIn(emptyStandIn(), 90)).toBeNaN()
})

test('what the probe read over the members is kept, and forgotten with a time of four hours', () => {
  const standIn = heard(60, -8)
  for (let k = 0; k < 120; k++) hear(standIn, NaN, 80)
  expect(standsIn(standIn, 120)).toBeCloseTo(120 - 8 / Math.E, 9)
})

test('a probe that speaks again is believed at once, and its newest offset counts', () => {
  const standIn = heard(60, 10)
  for (let k = 0; k < 30; k++) hear(standIn, NaN, 80)
  for (let k = 0; k < 60; k++) hear(standIn, 80 - 4, 80)
  expect(standIn.silentBeats).toBe(0)
  // sixty beats at a tenth each leave e^-6 of the 14 K between both
  expect(standsIn(standIn, 80)).toBeCloseTo(76, 1)
})
