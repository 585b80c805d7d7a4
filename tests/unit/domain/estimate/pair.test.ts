import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { defaultKilnConfig } from '../../../../server/contract/kiln-defaults.ts'
import type { Estimate } from '../../../../server/contract/fold.ts'
import type { Network } from '../../../../server/domain/estimate/learned/network.ts'
import { judges } from '../../../../server/domain/estimate/learned/tables/judge.ts'
import { horizonOf } from '../../../../server/domain/estimate/learned/horizon.ts'
import { horizons } from '../../../../server/domain/estimate/learned/tables/horizon.ts'
import { signCount } from '../../../../server/domain/estimate/learned/signs.ts'
import { pairOf } from '../../../../server/domain/estimate/pair.ts'
import { rangeFrom, rangeSigns } from '../../../../server/domain/estimate/range.ts'
import { ranges } from '../../../../server/domain/estimate/tables/range.ts'
import type { Advice, Estimator, GridReadings } from '../../../../server/domain/estimate/types.ts'

const hourMs = 3_600_000
const at = 36_000_000

/** An ensemble that always says the same worth, and after a hundred minutes when to seal. */
const says = (collectWorthPerH: number, smoke: Estimate | null = null): Estimator<{ steps: number }> => ({
  version: 7,
  start: () => ({ steps: 0 }),
  step: (state) => ({ steps: state.steps + 1 }),
  estimate: () => smoke,
  lesson: () => null,
  advice: (): Advice => ({
    collectWorthPerH,
    startCollecting: true,
    stopCollecting: false,
    seal: false,
    hottestUpperC: null,
    airLeak: false,
    because: { 'stop-collecting': [{ code: 'tar-share', value: 0.2 }] },
    sure: 'middle',
  }),
  forecast: (state) => ({
    calls: state.steps < 600 ? {} : { seal: { earliest: at + 2 * hourMs, likely: at + 4 * hourMs, latest: at + 8 * hourMs } },
    view: { at, smoke: [] },
  }),
  freeze: (state) => new Uint8Array([state.steps & 255]),
  thaw: (bytes) => ({ steps: bytes[0] ?? 0 }),
})

const judging = (shares: [number, number, number]): Network => ({
  sizes: [signCount, 3],
  mean: Array<number>(signCount).fill(0),
  spread: Array<number>(signCount).fill(1),
  weights: [Array<number>(signCount * 3).fill(0)],
  biases: [shares.map(Math.log)],
})

/** Always says the same hours: low, middle and high of start, stop and seal. */
const forecasting = (hours: number[]): Network => ({
  sizes: [signCount, 9],
  mean: Array<number>(signCount).fill(0),
  spread: Array<number>(signCount).fill(1),
  weights: [Array<number>(signCount * 9).fill(0)],
  biases: [hours],
})
const soon = [-0.5, -0.2, 1, 1, 3, 5, 4, 6, 10]

const grid = (at: number): GridReadings => ({
  at,
  fireboxC: 600,
  wallC: 200,
  outletC: 40,
  smokeC: null,
  ambientC: null,
  coreC: null,
  bottleKg: null,
})

function after(minutes: number, worthKgH: number, shares: [number, number, number], smokeC: number | null = null) {
  const both = pairOf(says(worthKgH), [judging(shares)], [forecasting(soon)])
  let state = both.start(defaultKilnConfig())
  for (let k = 0; k < minutes * 6; k++) state = both.step(state, { ...grid(k * 10_000), smokeC }, k === 0 ? [{ at: 0, kind: 'lit' }] : [])
  return { both, state, advice: both.advice(state) }
}

const smokeAt = (smokeC: number): Estimate => ({
  smokeC,
  smokeSd: 5,
  acidShare: 0.1,
  acidSd: 0,
  tarShare: 0,
  tarSd: 0,
  condensateKgH: 1,
  condensateKg: 5,
  charShare: 0.3,
  charSd: 0,
  inside: [],
  from: 'ensemble',
})

describe('a smoke probe that falls silent', () => {
  /** The smoke that the judge is told in the last minute of ten after `minutes` with a probe at 90 °C, where the ensemble says 133. */
  function judged(minutes: number): number | undefined {
    const both = pairOf(says(1, smokeAt(133)), [judging([1, 0, 0])], [forecasting(soon)])
    let state = both.start(defaultKilnConfig())
    for (let k = 0; k < (minutes + 10) * 6; k++) {
      const smokeC = k < minutes * 6 ? 90 : null
      state = both.step(state, { ...grid(k * 10_000), smokeC }, k === 0 ? [{ at: 0, kind: 'lit' }] : [])
    }
    return state.judge.memory.smoke.at(-1)
  }

  it('is stood in for by the ensemble once that was in step with it for an hour', () => {
    expect(judged(60)).toBeCloseTo(133, 9)
  })

  it('is nothing where it was heard for less, or never', () => {
    expect(judged(59)).toBeCloseTo(90, 9)
    expect(judged(0)).toBeUndefined()
  })
})

describe('ensemble and judge together', () => {
  it('stop when both see tar, and give both reasons', () => {
    const { advice } = after(60, -2, [0.1, 0, 0.9])
    expect(advice.stopCollecting).toBe(true)
    expect(advice.because['stop-collecting']?.map((reason) => reason.code)).toEqual(['tar-share', 'learned-tar'])
  })

  it.each([
    ['the judge sees tar where the ensemble sees a strong good flow', 4, [0.45, 0, 0.55]],
    ['both see good', 2, [0.9, 0.05, 0.05]],
  ] as const)('go on when %s', (_case, worth, shares) => {
    expect(after(60, worth, [...shares]).advice.stopCollecting).toBe(false)
  })

  it('stop at a common worth that neither can veto alone', () => {
    // 0.55 tanh(-1 / 1.5) + 0.45 (0.8 - 2 * 0.2) = -0.14; with 36 % of tar -0.36
    expect(after(60, -1, [0.8, 0, 0.2]).advice.stopCollecting).toBe(false)
    expect(after(60, -1, [0.64, 0, 0.36]).advice.stopCollecting).toBe(true)
    expect(after(60, 9, [0, 0, 1]).advice.stopCollecting).toBe(true)
  })

  it.each([
    ['the judge sees water alone', [0.1, 0.9, 0], false],
    ['the judge sees enough acid in the water', [0.3, 0.7, 0], true],
    ['it is past the water', [0.1, 0.2, 0.7], true],
  ] as const)('start only where both would: %s', (_case, shares, starts) => {
    // kg of good counts 1, of water -0.25: 0.1 - 0.225 and 0.3 - 0.175
    expect(after(60, 2, [...shares]).advice.startCollecting).toBe(starts)
  })

  it('keep a start that both advised', () => {
    const both = pairOf(says(2), [judging([0.9, 0.1, 0])], [forecasting(soon)])
    const doubting = pairOf(says(2), [judging([0.05, 0.95, 0])], [forecasting(soon)])
    let state = both.start(defaultKilnConfig())
    for (let k = 0; k < 360; k++) state = both.step(state, grid(k * 10_000), k === 0 ? [{ at: 0, kind: 'lit' }] : [])
    for (let k = 360; k < 720; k++) state = doubting.step(state, grid(k * 10_000), [])
    expect(state.judge.worth).toBeLessThan(0)
    expect(doubting.advice(state).startCollecting).toBe(true)
  })

  it('freeze and thaw to the same advice and the same bytes', () => {
    const { both, state, advice } = after(45, -2, [0.1, 0, 0.9])
    const bytes = both.freeze(state)
    const again = both.thaw(bytes)
    expect(both.advice(again)).toEqual(advice)
    expect(both.freeze(again)).toEqual(bytes)
  })
})

describe('their forecasts', () => {
  const told = (minutes: number) => {
    const { both, state } = after(minutes, 2, [0.9, 0.05, 0.05])
    return both.forecast(state).calls
  }
  const hours = (range: { earliest: number; likely: number; latest: number } | undefined): number[] =>
    range === undefined ? [] : [range.earliest, range.likely, range.latest].map((t) => (t - at) / hourMs)

  const closeTo = (told: number[], want: readonly number[]) => want.forEach((hour, i) => expect(told[i]).toBeCloseTo(hour, 9))

  it('are told from the learned opinion alone, in both places, while the ensemble has none', () => {
    closeTo(hours(told(60)['stop-collecting']), rangeFrom(ranges.stop, rangeSigns([1, 3, 5], [1, 3, 5])))
  })

  it('are told from both once it has', () => {
    closeTo(hours(told(110).seal), rangeFrom(ranges.seal, rangeSigns([2, 4, 8], [4, 6, 10])))
  })

  it('never lie in the past', () => {
    for (const hour of hours(told(60)['start-collecting'])) expect(hour).toBeGreaterThanOrEqual(0)
  })

  it('are silent before the fire is lit', () => {
    const both = pairOf(says(1), [judging([1, 1, 1])], [forecasting(soon)])
    const state = both.step(both.start(defaultKilnConfig()), grid(0), [])
    expect(both.forecast(state).calls).toEqual({})
  })
})

describe('the shipped judges and forecasters', () => {
  it('have a weight for every sign and every unit, all finite', () => {
    expect([judges.length, horizons.length].every((count) => count > 0)).toBe(true)
    for (const { sizes, mean, spread, weights, biases } of [...judges, ...horizons]) {
      expect([sizes[0], mean.length, spread.length]).toEqual([signCount, signCount, signCount])
      weights.forEach((layer, l) => {
        expect(layer).toHaveLength((sizes[l] ?? 0) * (sizes[l + 1] ?? 0))
        expect(biases[l]).toHaveLength(sizes[l + 1] ?? 0)
        expect(layer.every(Number.isFinite)).toBe(true)
      })
    }
  })
  it('forecast in order, whatever the signs', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: signCount, maxLength: signCount }), (signs) => {
        for (const [low, middle, high] of Object.values(horizonOf(horizons, signs))) {
          expect(low).toBeGreaterThanOrEqual(0)
          expect(middle).toBeGreaterThanOrEqual(low)
          expect(high).toBeGreaterThanOrEqual(middle)
        }
      }),
      { numRuns: 50 },
    )
  })
})
