import { type Network, outputsOf } from './network.ts'

// The learned forecaster: the same signs as the judge has, and how many hours are left until each call. It knows how long firings
// take; what this kiln is like, the ensemble knows better.

/** One truth in ten lies before the first and one after the last. */
export const horizonLevels = [0.1, 0.5, 0.9] as const

export type Hours = readonly [low: number, middle: number, high: number]
export type Horizon = Record<'start' | 'stop' | 'seal', Hours>

/** Hours until each call: mean of the networks, in order and not in the past. */
export function horizonOf(networks: readonly Network[], signs: readonly number[]): Horizon {
  const outs = networks.map((network) => outputsOf(network, signs))
  const hours = (c: number): Hours => {
    const level = (q: number): number => outs.reduce((sum, out) => sum + (out[c * horizonLevels.length + q] ?? 0), 0) / outs.length
    const [low = 0, middle = 0, high = 0] = [0, 1, 2].map((q) => Math.max(0, level(q))).sort((a, b) => a - b)
    return [low, middle, high]
  }
  return { start: hours(0), stop: hours(1), seal: hours(2) }
}
