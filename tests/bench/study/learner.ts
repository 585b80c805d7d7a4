import type { Network } from '../../../server/domain/estimate/learned/network.ts'
import type { Chance } from '../../../server/simulator/chance.ts'
import type { Lessons } from './lessons.ts'
import type { Task } from './tasks.ts'

const batch = 512
const farthest = 5

interface Layer {
  from: number
  to: number
  values: Float32Array
  gradient: Float32Array
  first: Float32Array
  second: Float32Array
}

const makeLayer = (from: number, to: number, chance: Chance): Layer => {
  const size = (from + 1) * to
  const values = new Float32Array(size)
  const spread = Math.sqrt(1.5 / from)
  for (let i = 0; i < from * to; i++) values[i] = spread * chance.normal()
  return { from, to, values, gradient: new Float32Array(size), first: new Float32Array(size), second: new Float32Array(size) }
}

function scales(lessons: Pick<Lessons, 'signs'>): { mean: Float32Array; spread: Float32Array } {
  const n = lessons.signs.length
  const width = lessons.signs[0]?.length ?? 0
  const mean = new Float32Array(width)
  const spread = new Float32Array(width)
  for (let c = 0; c < width; c++) {
    let sum = 0
    let square = 0
    for (const row of lessons.signs) {
      const value = row[c] as number
      sum += value
      square += value * value
    }
    mean[c] = sum / n
    spread[c] = Math.sqrt(Math.max(square / n - (sum / n) * (sum / n), 0)) + 1e-3
  }
  return { mean, spread }
}

/** Adam with a falling step (Kingma and Ba 2015), noise on the signs against learning a world by heart. */
export function learn(lessons: Pick<Lessons, 'signs'>, task: Task, epochs: number, chance: Chance, told: (line: string) => void): Network {
  const { mean, spread } = scales(lessons)
  const width = mean.length
  const sizes = [width, ...task.hidden, task.begin.length]
  const layers = sizes.slice(1).map((to, l) => makeLayer(sizes[l] as number, to, chance))
  const last = layers[layers.length - 1]
  if (last) last.values.set(task.begin, last.from * last.to)
  const units = sizes.map((size) => new Float32Array(size))
  const errors = sizes.map((size) => new Float32Array(size))
  const order = lessons.signs.map((_, i) => i)
  let steps = 0
  for (let epoch = 0; epoch < epochs; epoch++) {
    for (let i = order.length - 1; i > 0; i--) {
      const k = chance.whole(0, i)
      const kept = order[i] as number
      order[i] = order[k] as number
      order[k] = kept
    }
    const rate = 2e-3 * 0.5 * (1 + Math.cos((Math.PI * epoch) / epochs)) + 1e-5
    let loss = 0
    for (let at = 0; at < order.length; at += batch) {
      const part = order.slice(at, at + batch)
      for (const layer of layers) layer.gradient.fill(0)
      for (const row of part) {
        const signs = lessons.signs[row] as Float32Array
        const input = units[0] as Float32Array
        for (let c = 0; c < width; c++) {
          const scaled = ((signs[c] as number) - (mean[c] as number)) / (spread[c] as number)
          input[c] = Math.min(Math.max(scaled, -farthest), farthest) + task.noise * (2 * chance.uniform() - 1) * 1.7
        }
        loss += pass(layers, units, errors, task, row, 1 / part.length)
      }
      steps++
      for (const layer of layers) descend(layer, rate, steps)
    }
    told(`epoch ${epoch + 1} of ${epochs}: loss ${((loss * batch) / order.length).toFixed(4)}`)
  }
  return toNetwork(sizes, mean, spread, layers)
}

/** Forward and back for one row; adds to the gradients and returns the loss. */
function pass(layers: Layer[], units: Float32Array[], errors: Float32Array[], task: Task, row: number, weight: number): number {
  const top = layers.length
  layers.forEach((layer, l) => {
    const below = units[l] as Float32Array
    const above = units[l + 1] as Float32Array
    above.set(layer.values.subarray(layer.from * layer.to))
    for (let i = 0; i < layer.from; i++) {
      const value = below[i] as number
      const base = i * layer.to
      for (let k = 0; k < layer.to; k++) above[k] = (above[k] as number) + value * (layer.values[base + k] as number)
    }
    if (l < top - 1) for (let k = 0; k < layer.to; k++) above[k] = Math.tanh(above[k] as number)
  })
  const error = errors[top] as Float32Array
  const loss = weight * task.loss(row, units[top] as Float32Array, error)
  for (let k = 0; k < error.length; k++) error[k] = weight * (error[k] as number)
  for (let l = top - 1; l >= 0; l--)
    backward(layers[l] as Layer, units[l] as Float32Array, errors[l + 1] as Float32Array, errors[l] as Float32Array)
  return loss
}

function backward(layer: Layer, below: Float32Array, error: Float32Array, errorBelow: Float32Array): void {
  for (let k = 0; k < layer.to; k++)
    layer.gradient[layer.from * layer.to + k] = (layer.gradient[layer.from * layer.to + k] as number) + (error[k] as number)
  for (let i = 0; i < layer.from; i++) {
    const value = below[i] as number
    const base = i * layer.to
    let back = 0
    for (let k = 0; k < layer.to; k++) {
      const e = error[k] as number
      layer.gradient[base + k] = (layer.gradient[base + k] as number) + value * e
      back += (layer.values[base + k] as number) * e
    }
    errorBelow[i] = back * (1 - value * value)
  }
}

function descend(layer: Layer, rate: number, steps: number): void {
  const unbias1 = 1 - Math.pow(0.9, steps)
  const unbias2 = 1 - Math.pow(0.999, steps)
  for (let i = 0; i < layer.values.length; i++) {
    const weight = layer.values[i] as number
    const gradient = (layer.gradient[i] as number) + (i < layer.from * layer.to ? 1e-4 * weight : 0)
    const first = 0.9 * (layer.first[i] as number) + 0.1 * gradient
    const second = 0.999 * (layer.second[i] as number) + 0.001 * gradient * gradient
    layer.first[i] = first
    layer.second[i] = second
    layer.values[i] = weight - (rate * (first / unbias1)) / (Math.sqrt(second / unbias2) + 1e-8)
  }
}

/** Four digits are plenty: the shares change by less than a thousandth. */
const short = (values: ArrayLike<number>): number[] => Array.from(values, (value) => Number(value.toPrecision(4)))

function toNetwork(sizes: number[], mean: Float32Array, spread: Float32Array, layers: Layer[]): Network {
  return {
    sizes,
    mean: short(mean),
    spread: short(spread),
    weights: layers.map((layer) => short(layer.values.subarray(0, layer.from * layer.to))),
    biases: layers.map((layer) => short(layer.values.subarray(layer.from * layer.to))),
  }
}
