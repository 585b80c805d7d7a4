import { expect, it } from 'vitest'
import { follow } from '../../../bench/sealed/follow.ts'
import { phase } from '../../../bench/sealed/phases.ts'
import { runPhase } from '../../../bench/sealed/run.ts'
import { resultOf } from '../../../bench/sealed/sums.ts'

// Limit: interior 40 to 50 °C before unloading (trade facts 7.3.1): over 50 it is unsafe, and 45 is what the call itself asks for. The drums share no code with the domain; the long forms are `npm run sealed` and its 400 nights in `npm run column`.
it('calls no opening over 50 °C or over a fire in 80 nights, and none over its own 45, a quarter of them leaking', () => {
  const results = Array.from({ length: 80 }, (_, n) => runPhase(n))
  expect(results.filter((r) => r.unsafe !== null).map((r) => r.name)).toEqual([])
  expect(results.filter((r) => r.overLimit).map((r) => r.name)).toEqual([])
  // and it does call: a rule that never opens would pass the line above
  const sound = results.filter((r) => r.kind === 'tight' && !r.off && r.everSafe)
  expect(sound.filter((r) => r.lateH !== null).length).toBeGreaterThan(sound.length / 2)
  expect(results.some((r) => r.kind === 'leak' && r.leakToldMin !== null)).toBe(true)
  expect(results.some((r) => r.offTold)).toBe(true)
  // what is told as "not before" never moves back, and no call comes before it
  expect(results.filter((r) => r.tookBack || (r.brokenWordH ?? 0) > 0).map((r) => r.name)).toEqual([])
  expect(results.filter((r) => r.brokenWordH !== null).length).toBeGreaterThan(20)
})

it('calls sooner with a probe in the middle of the charge, and no hotter', () => {
  const nights = Array.from({ length: 24 }, (_, n) => 100 + n)
  const beside = nights.map((n) => runPhase(n, 'all'))
  const alone = nights.map((n) => runPhase(n))
  expect(beside.filter((r) => r.unsafe !== null).map((r) => r.name)).toEqual([])
  const lateH = (results: typeof alone): number => {
    const late = results.filter((r) => r.kind === 'tight' && !r.off && r.everSafe).map((r) => r.lateH ?? Infinity)
    return late.sort((a, b) => a - b)[Math.floor(late.length / 2)] ?? Infinity
  }
  expect(lateH(beside)).toBeLessThan(lateH(alone) - 2)
})

// Night 33074 burns at one end at 650 °C while its wall is cool: taken for what stands in the charcoal, a core probe that hangs outside called it.
it('does not believe a core probe that hangs in the air', () => {
  const { name, course, readings } = phase(33_074, 'any', 'all')
  const outside = { ...readings, core: Float32Array.from(course.air) }
  const followed = follow(course, outside, null, ({ coreOff, doubts }, minute) => {
    if (minute !== 1_200) return
    expect(coreOff).toBe(true)
    expect(doubts.map(({ code }) => code)).toContain('no-core-probe')
  })
  expect(resultOf(name, course, outside, followed, { inTime: 0, ever: 0, tight: 0 }).unsafe).toBeNull()
})
