import { expect, it } from 'vitest'
import { runPhase } from '../../../bench/sealed/run.ts'

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
