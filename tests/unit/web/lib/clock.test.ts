import { expect, test } from 'vitest'
import { SiteClock } from '../../../../web/src/lib/live/clock.svelte.ts'
import { SleepWatch } from '../../../../web/src/lib/live/sleep.svelte.ts'

test('the site clock runs on from the last message, whatever the tablet believes', () => {
  let counter = 50
  const clock = new SiteClock(() => counter)
  clock.heard(1_000_000)
  counter += 1500
  expect(clock.read()).toBe(1_001_500)
})

test('a demo at 600 times moves ten minutes a second', () => {
  let counter = 0
  const clock = new SiteClock(() => counter)
  clock.heard(0, 600)
  counter = 1000
  expect(clock.read()).toBe(600_000)
})

test('silence is counted in the time of the tablet, not of the demo', () => {
  let counter = 0
  const clock = new SiteClock(() => counter)
  clock.heard(0, 600)
  counter = 7000
  clock.tick()
  expect(clock.silentS).toBe(7)
})

test('a gap between two ticks is told as blind minutes until it has been seen', () => {
  let now = 0
  const watch = new SleepWatch(() => now)
  now = 1000
  expect(watch.tick()).toBe(false)
  now += 23 * 60_000
  expect(watch.tick()).toBe(true)
  expect(watch.blindMin).toBe(23)
  watch.seen()
  expect(watch.blindMin).toBeNull()
})
