import { guessOf, roomOf } from '../../../server/domain/cooling/bound.ts'
import { coldestK, softK } from '../../../server/domain/cooling/signs.ts'
import type { Network } from '../../../server/domain/estimate/learned/network.ts'
import type { Task } from '../study/tasks.ts'
import type { Row } from './gather.ts'

const limitC = 45
/** Charcoal that burns more than this is a fire, W. */
const fireW = 5
/** Of the distribution of errors: heavy tails. */
const freedom = 6

export const burns = (row: Row): boolean => row.burningW > fireW

/** Softened logarithm of the hottest part over the wall. */
const share = ({ hottestC, feltC, nowK }: Row): number =>
  Math.log((Math.max(0, hottestC - feltC) + softK) / (Math.max(coldestK, nowK) + softK))

/** Nights teach the bound where they are near the limit and nothing burns. */
export const teachesBound = (row: Row): boolean =>
  !row.off && !burns(row) && row.hottestC > 32 && row.hottestC < 160 && row.hottestC - row.feltC > 4

/** Middle and spread of the share: Student's likelihood, what lies near the limit of opening counts most. */
export function boundTask(rows: readonly Row[]): Task {
  const shares = rows.map(share)
  const weights = rows.map(({ hottestC: c }) => Math.exp(-0.5 * ((c - 52) / (c < 52 ? 8 : 30)) ** 2) + 0.05)
  const mean = weights.reduce((a, b) => a + b, 0) / weights.length
  return {
    hidden: [40, 20],
    begin: [0.2, -2.5],
    noise: 0.1,
    loss(row, out, error) {
      const weight = (weights[row] ?? 0) / mean
      const logSpread = Math.min(1, Math.max(-4, out[1] ?? 0))
      const spread = Math.exp(logSpread)
      const off = ((shares[row] ?? 0) - (out[0] ?? 0)) / spread
      const pull = ((freedom + 1) * off) / (freedom + off * off)
      error[0] = (-weight * pull) / spread
      error[1] = weight * (1 - pull * off)
      return weight * (logSpread + ((freedom + 1) / 2) * Math.log(1 + (off * off) / freedom))
    },
  }
}

/** Unsafe as the scorer of recorded firings counts it: so much over the limit of opening, or a fire. */
const unsafeOverK = 5
const isHot = (row: Row): boolean => burns(row) || row.hottestC >= limitC + unsafeOverK
/** Nights so far over the limit, in spreads, nobody asks to open. */
const leastRoom = -1

/** The second look is taught where the first would soon open. */
export function secondLook(rows: readonly Row[], networks: readonly Network[]): { rows: Row[]; signs: Float32Array[] } {
  const taken: Row[] = []
  const signs: Float32Array[] = []
  for (const row of rows) {
    const seen = Array.from(row.signs)
    const guess = guessOf(networks, seen)
    const room = roomOf(guess, row.nowK, row.feltC, limitC)
    if (room < leastRoom) continue
    taken.push(row)
    signs.push(Float32Array.from([...seen, room, Math.log(guess.spread)]))
  }
  return { rows: taken, signs }
}

/** Odds that it is hot after all: cross-entropy. */
export function hotTask(rows: readonly Row[]): Task {
  return {
    hidden: [28],
    begin: [-2],
    noise: 0.17,
    loss(row, out, error) {
      const hot = isHot(rows[row] as Row)
      const odds = Math.min(30, Math.max(-30, out[0] ?? 0))
      error[0] = 1 / (1 + Math.exp(-odds)) - (hot ? 1 : 0)
      return Math.log(1 + Math.exp(hot ? -odds : odds))
    },
  }
}
