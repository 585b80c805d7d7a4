import { describe, expect, it } from 'vitest'
import type { Act } from '../../../../server/contract/actions.ts'
import type { Estimate } from '../../../../server/contract/fold.ts'
import type { Estimator } from '../../../../server/domain/estimate/types.ts'
import { makeKilnFold } from '../../../../server/domain/firing/fold.ts'
import { letRun, levelOf, markRun, startRun } from '../../../../server/domain/firing/run.ts'
import { defaultKilnConfig } from '../../../../server/contract/kiln-defaults.ts'
import { drum, firing, lit } from './bench.ts'

const minuteMs = 60_000

function estimateOf(condensateKgH: number): Estimate {
  const shares = { acidShare: 0.1, acidSd: 0, tarShare: 0, tarSd: 0, charShare: 0.5, charSd: 0 }
  return { smokeC: 100, smokeSd: 5, ...shares, condensateKgH, condensateKg: 99, inside: [], from: 'ensemble' }
}

/** A drum that gives 6 kg an hour, as simple as an estimator can be. */
const even: Estimator<{ n: number }> = {
  version: 1,
  start: () => ({ n: 0 }),
  step: ({ n }) => ({ n: n + 1 }),
  estimate: () => estimateOf(6),
  lesson: () => null,
  advice: () => ({
    collectWorthPerH: null,
    startCollecting: false,
    stopCollecting: false,
    seal: false,
    hottestUpperC: null,
    airLeak: false,
    because: {},
    sure: 'low',
  }),
  forecast: () => ({ calls: {}, view: { at: 0, smoke: [] } }),
  freeze: ({ n }) => Uint8Array.of(n & 255),
  thaw: (bytes) => ({ n: bytes[0] ?? 0 }),
}

const middle = (level: { low: number; high: number } | null): number | null => (level === null ? null : (level.low + level.high) / 2)

describe('what is in the bottle under the outlet', () => {
  const act = (id: string, atMin: number, action: 'start-collecting' | 'swap-bottle' | 'stop-collecting', agoMin = 0): Act => ({
    id,
    at: atMin * minuteMs,
    doneAt: (atMin - agoMin) * minuteMs,
    act: { action },
  })
  function ran(minutes: number, run = startRun()) {
    for (let n = 0; n < minutes; n++) letRun(run, estimateOf(6))
    return run
  }

  it('is what ran since it was put there, and what ran before a late entry of it too', () => {
    const run = ran(60)
    const swap = act('b', 60, 'swap-bottle', 10)
    markRun(run, swap, estimateOf(6))
    expect(middle(levelOf(ran(30, run), [swap]))).toBeCloseTo(4)
  })
  it('begins anew with each bottle, and ends with the last', () => {
    const run = ran(60)
    const acts = [act('a', 60, 'start-collecting')]
    markRun(run, acts[0]!, estimateOf(6))
    acts.push(act('b', 90, 'swap-bottle'))
    markRun(ran(30, run), acts[1]!, estimateOf(6))
    expect(middle(levelOf(ran(10, run), acts))).toBeCloseTo(1)
    expect(levelOf(run, [...acts, act('c', 101, 'stop-collecting')])).toBeNull()
  })
  it('goes back to the bottle before when a change is struck out, and stays where only its litres are put right', () => {
    const run = ran(60)
    const acts = [act('a', 60, 'start-collecting')]
    markRun(run, acts[0]!, estimateOf(6))
    acts.push(act('b', 90, 'swap-bottle'))
    markRun(ran(30, run), acts[1]!, estimateOf(6))
    ran(60, run)
    const struck: Act = { id: 'c', at: 150 * minuteMs, doneAt: 90 * minuteMs, act: { action: 'note', text: '' }, corrects: 'b' }
    expect(middle(levelOf(run, [...acts, struck]))).toBeCloseTo(9)
    const right: Act = { ...struck, act: { action: 'swap-bottle', litres: 3 } }
    // an hour later the drum gives less, which must not count for the bottle's beginning
    markRun(run, right, estimateOf(2))
    expect(middle(levelOf(run, [...acts, right]))).toBeCloseTo(6)
  })
  it('is not known where no model ran when it was put there', () => {
    const swap = act('b', 60, 'swap-bottle')
    const run = startRun()
    markRun(run, swap, null)
    expect(levelOf(ran(30, run), [swap])).toBeNull()
  })
})

describe('the bottle in the fold', () => {
  const fold = makeKilnFold(even)
  const inputs = firing(drum, [lit, [10, { action: 'start-collecting' }], [40, { action: 'swap-bottle', litres: 3 }]], -2, 50)
  function play(list = inputs, state = fold.start(defaultKilnConfig())) {
    for (const input of list) state = fold.step(state, input).state
    return state
  }

  it('is told to the page, and survives being frozen at any place', () => {
    const whole = play()
    const at = inputs.at(-1)!.at
    expect(middle(fold.view(whole, at).firing.bottle.level)).toBeCloseTo(1, 0)
    const half = Math.floor(inputs.length / 2)
    const thawed = fold.thaw(fold.freeze(play(inputs.slice(0, half))))
    expect(fold.freeze(play(inputs.slice(half), thawed))).toEqual(fold.freeze(whole))
  })
})
