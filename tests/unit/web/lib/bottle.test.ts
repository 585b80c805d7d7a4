import { expect, test } from 'vitest'
import { bottleOf, levelText } from '../../../../web/src/lib/kiln/bottle.ts'
import { Measures } from '../../../../web/src/lib/words/measures.ts'
import { en } from '../../../../web/src/words/en.ts'
import { channel } from '../../../browser/fake/kiln.ts'
import { scenes } from '../../../browser/fake/scenes.ts'

const { collecting } = scenes
const holding = (low: number, high: number) => ({
  ...collecting,
  firing: { ...collecting.firing, bottle: { ...collecting.firing.bottle, level: { low, high } } },
})

test('a bottle is told by its bounds, and when it may be full at the rate of now with the same spread', () => {
  // 2.1 kg an hour, give or take 0.3 of it; 2.7 L of room above the higher bound
  const { low, high, sizeL, fullInMs } = bottleOf(holding(1.24, 2.3))!
  expect([low, high, sizeL]).toEqual([1.24, 2.3, 5])
  expect(fullInMs! / 3_600_000).toBeCloseTo(2.7 / (2.1 * 1.3), 1)
})
test('it may be full at once, and nobody knows when where nothing runs', () => {
  expect(bottleOf(holding(3.2, 5.9))?.fullInMs).toBe(0)
  const still = holding(1.2, 2.3)
  expect(bottleOf({ ...still, estimate: { ...still.estimate!, condensateKgH: 0 } })?.fullInMs).toBeNull()
})
test('a scale under it outranks the estimate, and a bottle that was taken away holds nothing', () => {
  expect(bottleOf({ ...holding(1.2, 2.3), channels: [...collecting.channels, channel('bottle', 3.4)] })).toMatchObject({
    low: 3.4,
    high: 3.4,
  })
  const taken = holding(1.2, 2.3)
  expect(bottleOf({ ...taken, firing: { ...taken.firing, collectingSince: null } })).toBeNull()
})
test('a bottle is told in words where a number would say nothing', () => {
  const measures = new Measures({ language: 'en', temperature: 'C', volume: 'L', mass: 'kg' })
  const told = (low: number, high: number) => levelText({ low, high, sizeL: 5, fullInMs: null }, en, measures)
  expect(told(0.06, 0.14)).toBe('a little')
  expect(told(0.1, 0.4)).toBe('~ 0.1 to 0.4 of 5 L')
  expect(told(3.2, 5.9)).toBe('look: ~ 3.2 or more of 5 L')
  expect(told(5.1, 6)).toBe('look: full by now')
})
