import { describe, expect, it } from 'vitest'
import { startJudge, stepJudge } from '../../../../../server/domain/estimate/learned/judge.ts'
import { emptyMemory, light, type Memory, quantile, rememberMinute } from '../../../../../server/domain/estimate/learned/memory.ts'
import { type Network, runNetwork } from '../../../../../server/domain/estimate/learned/network.ts'
import { signCount, signsOf } from '../../../../../server/domain/estimate/learned/signs.ts'
import type { Evidence, GridReadings } from '../../../../../server/domain/estimate/types.ts'

const minute = { fireboxC: 600, wallC: 20, outletC: 20, smokeC: null, fed: false, wetted: false, drip: 0, smoke: 0 }

/** Ten minutes of air at 20 °C, then a fire; the wall climbs by one degree a minute. */
function played(minutes: number, smokeC: number | null = null): Memory {
  const memory = emptyMemory({ massKg: 80, moisturePct: 25, pieceMm: 65 })
  for (let i = 0; i < 10; i++) rememberMinute(memory, { ...minute, fireboxC: 20 })
  light(memory)
  for (let i = 1; i <= minutes; i++) rememberMinute(memory, { ...minute, wallC: 20 + i, outletC: 20 + Math.min(i, 30), smokeC })
  return memory
}

describe('what the judge remembers', () => {
  it('takes the air from the minutes before lighting', () => {
    expect(played(1).airC).toBe(20)
  })

  it('sums the heat as firebox over outlet, which an independent sum gives too', () => {
    let sum = 0
    for (let i = 1; i <= 240; i++) sum += (600 - (20 + Math.min(i, 30))) / 60
    expect(played(240).heatKh).toBeCloseTo(sum, 6)
  })

  it('counts heat since 100 °C only from there on', () => {
    const memory = played(240)
    expect(memory.heatSince100Kh).toBeGreaterThan(0)
    expect(memory.heatSince100Kh).toBeLessThan(memory.heatKh * 0.7)
  })

  it('keeps the last value of a silent channel and never makes one up before the first', () => {
    const memory = emptyMemory({})
    rememberMinute(memory, { ...minute, wallC: null })
    expect(memory.smoothWall).toEqual([])
    rememberMinute(memory, minute)
    rememberMinute(memory, { ...minute, wallC: null })
    expect(memory.smoothWall).toEqual([20, 20])
  })

  it('interpolates quantiles as the textbook does (linear, type 7 of Hyndman and Fan 1996)', () => {
    expect([quantile([1, 2, 3, 4], 4, 0.25), quantile([5, 1, 9], 3, 0.5), quantile([1, 2, 3, 4, 5], 3, 1)]).toEqual([1.75, 5, 5])
  })
})

describe('the signs', () => {
  it('are as many as the networks expect, and finite from the first minute on', () => {
    for (const minutes of [0, 1, 30, 300]) {
      const signs = signsOf(played(minutes))
      expect(signs).toHaveLength(signCount)
      expect(signs.every(Number.isFinite)).toBe(true)
    }
  })

  it('say nothing of smoke where no probe was heard for ten minutes', () => {
    const memory = played(60, 90)
    const withProbe = signsOf(memory)
    for (let i = 0; i < 11; i++) rememberMinute(memory, { ...minute, wallC: 80, outletC: 50 })
    const without = signsOf(memory)
    expect(withProbe[35]).toBe(1)
    expect(without.slice(35, 45)).toEqual(Array(10).fill(0))
  })
})

const unitNetwork: Network = {
  sizes: [2, 2, 3],
  mean: [1, 0],
  spread: [2, 1],
  weights: [
    [1, 0, 0, 1],
    [1, 0, -1, 0, 1, 0],
  ],
  biases: [
    [0, 0],
    [0, 0, 0],
  ],
}

describe('the network', () => {
  it('is scale, tanh, softmax: worked by hand', () => {
    // signs (3, 0.5) scale to (1, 0.5); hidden tanh(1), tanh(0.5); outputs (tanh 1, tanh 0.5, -tanh 1)
    const raised = [Math.tanh(1), Math.tanh(0.5), -Math.tanh(1)].map(Math.exp)
    const sum = raised.reduce((a, b) => a + b)
    runNetwork(unitNetwork, [3, 0.5]).forEach((share, i) => expect(share).toBeCloseTo((raised[i] ?? 0) / sum, 12))
  })

  it('lets no sign pull further than five of its spreads', () => {
    expect(runNetwork(unitNetwork, [1e9, 0])).toEqual(runNetwork(unitNetwork, [11, 0]))
  })
})

describe('the judge', () => {
  const worth = { good: 1, tarry: -2, watery: -0.25 }
  const says = (shares: [number, number, number]): Network => ({
    sizes: [signCount, 3],
    mean: Array<number>(signCount).fill(0),
    spread: Array<number>(signCount).fill(1),
    weights: [Array<number>(signCount * 3).fill(0)],
    biases: [shares.map(Math.log)],
  })
  const grid = (at: number): GridReadings => ({
    at,
    fireboxC: 600,
    wallC: 150,
    outletC: 40,
    smokeC: null,
    ambientC: null,
    coreC: null,
    bottleKg: null,
  })
  const lit: Evidence[] = [{ at: 0, kind: 'lit' }]

  /** Worth after so many minutes of each. */
  function worthAfter(plan: [number, [number, number, number]][]): number {
    const state = startJudge({})
    let at = 0
    for (const [minutes, shares] of plan)
      for (let k = 0; k < minutes * 6; k++, at += 10_000) stepJudge(state, grid(at), at === 0 ? lit : [], [says(shares)], worth)
    return state.worth ?? NaN
  }
  const good: [number, number, number] = [0.9, 0.05, 0.05]
  const tarry: [number, number, number] = [0.1, 0, 0.9]

  it('weighs the shares by what they are worth', () => {
    expect(worthAfter([[60, good]])).toBeCloseTo(0.9 - 0.25 * 0.05 - 2 * 0.05, 9)
  })

  it('comes down with tar that lasts by the twelve minutes of its smoothing, and does not mind a puff of it', () => {
    const before = 0.9 - 0.25 * 0.05 - 2 * 0.05
    const after = 0.1 - 2 * 0.9
    expect(
      worthAfter([
        [60, good],
        [12, tarry],
      ]),
    ).toBeCloseTo(after + (before - after) / Math.E, 9)
    expect(
      worthAfter([
        [60, good],
        [3, tarry],
      ]),
    ).toBeGreaterThan(0)
  })

  it('has no opinion before the fire is lit', () => {
    const state = startJudge({})
    for (let k = 0; k < 60; k++) stepJudge(state, grid(k * 10_000), [], [says(good)], worth)
    expect(state.worth).toBeNull()
  })
})
