import { horizonLevels } from '../../../server/domain/estimate/learned/horizon.ts'
import type { Lessons } from './lessons.ts'

/** What a network is taught: its shape, and how far its outputs are from the truth of a row. */
export interface Task {
  hidden: readonly number[]
  /** Constants of the outputs at the beginning; as many as there are outputs. */
  begin: readonly number[]
  /** Noise on the signs, in their spreads. */
  noise: number
  /** Loss of a row at these outputs; its slopes go into `error`. */
  loss(row: number, out: Float32Array, error: Float32Array): number
}

/** Shares of good, watery and tar-laden condensate: cross-entropy, rows weighted by what flows. */
export function classesTask({ shares, weights }: Lessons): Task {
  const meanWeight = weights.reduce((a, b) => a + b, 0) / weights.length
  return {
    hidden: [48, 32],
    begin: [0, 0, 0],
    noise: 0.05,
    loss(row, out, error) {
      const weight = (weights[row] as number) / meanWeight
      const target = shares[row] as Float32Array
      const highest = Math.max(...out)
      let sum = 0
      for (const value of out) sum += Math.exp(value - highest)
      let loss = 0
      out.forEach((value, k) => {
        const share = Math.exp(value - highest) / sum
        loss -= weight * (target[k] as number) * Math.log(share + 1e-9)
        error[k] = weight * (share - (target[k] as number))
      })
      return loss
    },
  }
}

const calls = 3
const farthestHours = 12
const longPastHours = -2
/** The corner of the loss is rounded over so many hours. */
const soft = 0.1

/**
 * Hours until start, stop and seal, each at its levels: the loss of quantile regression (Koenker and Bassett 1978), of which the interval
 * score of a forecast is the sum (Gneiting and Raftery 2007). A charring that was not done when the kiln was sealed is known to lie later.
 */
export function horizonTask({ until, firing }: Lessons): Task {
  const rows = until.length
  const weights = new Float32Array(rows * calls)
  const means = [0, 0, 0]
  until.forEach((hours, row) => {
    for (let c = 0; c < calls; c++) {
      const ahead = hours[c] as number
      // what is long past is forecast no more
      const timely = Number.isNaN(ahead) || ahead >= 0 ? 1 : ahead > -1.5 ? 0.5 : 0.1
      weights[row * calls + c] = timely * (firing[row] as number)
      means[c] = (means[c] as number) + (weights[row * calls + c] as number) / rows
    }
  })
  return {
    hidden: [32, 24],
    begin: [2, 2, 2, 3, 3, 3, 5, 5, 5],
    noise: 0.25,
    loss(row, out, error) {
      let loss = 0
      error.fill(0)
      for (let c = 0; c < calls; c++) {
        const known = until[row]?.[c] as number
        const atLeast = until[row]?.[calls] as number
        const weight = (weights[row * calls + c] as number) / (means[c] as number)
        horizonLevels.forEach((level, q) => {
          const k = c * horizonLevels.length + q
          const value = out[k] as number
          if (Number.isNaN(known)) {
            if (c < calls - 1 || value >= atLeast) return
            error[k] = -weight * level
            loss += weight * level * (atLeast - value)
            return
          }
          const off = Math.min(Math.max(known, longPastHours), farthestHours) - value
          error[k] = weight * (1 / (1 + Math.exp(Math.min(Math.max(off / soft, -30), 30))) - level)
          loss += weight * Math.max(level * off, (level - 1) * off)
        })
      }
      return loss
    },
  }
}
