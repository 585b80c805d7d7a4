import { describe, expect, it } from 'vitest'
import { defaultKilnConfig } from '../../../../server/contract/kiln-defaults.ts'
import type { Network } from '../../../../server/domain/estimate/learned/network.ts'
import { judges } from '../../../../server/domain/estimate/learned/tables/judge.ts'
import { signCount } from '../../../../server/domain/estimate/learned/signs.ts'
import { pairOf } from '../../../../server/domain/estimate/pair.ts'
import type { Advice, Estimator, GridReadings } from '../../../../server/domain/estimate/types.ts'

/** An ensemble that always says the same worth. */
const says = (collectWorthPerH: number): Estimator<{ steps: number }> => ({
  version: 7,
  start: () => ({ steps: 0 }),
  step: (state) => ({ steps: state.steps + 1 }),
  estimate: () => null,
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
  forecast: () => ({ calls: {}, view: { at: 0, smoke: [] } }),
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

function after(minutes: number, worthKgH: number, shares: [number, number, number]) {
  const both = pairOf(says(worthKgH), [judging(shares)])
  let state = both.start(defaultKilnConfig())
  for (let k = 0; k < minutes * 6; k++) state = both.step(state, grid(k * 10_000), k === 0 ? [{ at: 0, kind: 'lit' }] : [])
  return { both, state, advice: both.advice(state) }
}

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

  it('freeze and thaw to the same advice and the same bytes', () => {
    const { both, state, advice } = after(45, -2, [0.1, 0, 0.9])
    const bytes = both.freeze(state)
    const again = both.thaw(bytes)
    expect(both.advice(again)).toEqual(advice)
    expect(both.freeze(again)).toEqual(bytes)
  })
})

describe('the shipped judges', () => {
  it('have a weight for every sign and every unit, all finite', () => {
    expect(judges.length).toBeGreaterThan(0)
    for (const { sizes, mean, spread, weights, biases } of judges) {
      expect([sizes[0], mean.length, spread.length]).toEqual([signCount, signCount, signCount])
      weights.forEach((layer, l) => {
        expect(layer).toHaveLength((sizes[l] ?? 0) * (sizes[l + 1] ?? 0))
        expect(biases[l]).toHaveLength(sizes[l + 1] ?? 0)
        expect(layer.every(Number.isFinite)).toBe(true)
      })
    }
  })
})
