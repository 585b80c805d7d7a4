/** A small network: signs, scaled; hidden layers of tanh; linear outputs. */
export interface Network {
  /** Number of units: signs, hidden layers, outputs. */
  sizes: readonly number[]
  mean: readonly number[]
  spread: readonly number[]
  /** Layer after layer: the weights row by row (a row for each unit below), then the biases. */
  weights: readonly (readonly number[])[]
  biases: readonly (readonly number[])[]
}

export type Shares = [good: number, watery: number, tarry: number]

/** No sign counts for more than five of its spreads: the worlds it learned from did not go further. */
const farthest = 5

export function outputsOf(network: Network, signs: readonly number[]): number[] {
  let layer = signs.map((value, i) => {
    const scaled = (value - (network.mean[i] ?? 0)) / (network.spread[i] ?? 1)
    return Math.min(Math.max(scaled, -farthest), farthest)
  })
  network.weights.forEach((weights, l) => {
    const biases = network.biases[l] ?? []
    const width = biases.length
    const next = biases.slice()
    layer.forEach((value, i) => {
      for (let k = 0; k < width; k++) next[k] = (next[k] ?? 0) + value * (weights[i * width + k] ?? 0)
    })
    layer = l < network.weights.length - 1 ? next.map(Math.tanh) : next
  })
  return layer
}

/** Shares of good, watery and tar-laden condensate that sum to 1. */
export function runNetwork(network: Network, signs: readonly number[]): Shares {
  const out = outputsOf(network, signs)
  const top = Math.max(...out)
  const raised = out.map((value) => Math.exp(value - top))
  const sum = raised.reduce((a, b) => a + b, 0)
  return [(raised[0] ?? 0) / sum, (raised[1] ?? 0) / sum, (raised[2] ?? 0) / sum]
}
