import { expect, test } from 'vitest'
import { SiteClock, speedOf } from '../../../../web/src/lib/live/clock.svelte.ts'
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

test('each page takes the clock of the site it looks at: a demo that plays beside it never moves the clock of the kiln', () => {
  const demo = { playing: true, speed: 600 }
  const site = { nodes: [], refused: {}, health: [], demo }
  const hello = (speed: number) => ({ type: 'hello', seq: 0, version: '', now: 0, speed, clockSure: true, site, kilns: {} }) as const
  const beat = { type: 'beat', seq: 1, now: 0, n: 1 } as const
  expect(speedOf(hello(1), { demo: false }, null)).toBe(1)
  expect(speedOf(beat, { demo: false }, site)).toBeUndefined()
  expect(speedOf(hello(600), { demo: true }, null)).toBe(600)
  expect(speedOf(beat, { demo: true }, site)).toBe(600)
  // its last line was played: time stands still there
  expect(speedOf(beat, { demo: true }, { demo: { ...demo, playing: false } })).toBe(0)
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
