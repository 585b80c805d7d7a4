import type { Ms } from '../../../../server/contract/fold.ts'
import type { KilnView } from '../../../../server/contract/live.ts'
import type { Words } from '../../words/en.ts'
import type { Measures } from '../words/measures.ts'

export interface BottleLevel {
  low: number
  high: number
  sizeL: number
  /** Until it may be full, at the rate of now; 0 where it may be so already, null where nothing runs. */
  fullInMs: Ms | null
}

/** What is in the bottle under the drip, L: as weighed (a litre weighs about a kilogram), else as estimated; null where neither is known. */
export function bottleOf({ firing, channels, estimate }: KilnView): BottleLevel | null {
  const { sizeL, level } = firing.bottle
  const weighed = channels.find(({ role }) => role === 'bottle')?.value ?? null
  const bounds = weighed === null ? level : { low: weighed, high: weighed }
  if (firing.collectingSince === null || bounds === null) return null
  const { low, high } = bounds
  const rate = estimate?.from === 'ensemble' ? estimate.condensateKgH * (low > 0 && low < high ? (2 * high) / (low + high) : 1) : 0
  const left = Math.max(0, sizeL - high)
  return { low, high, sizeL, fullInMs: left === 0 ? 0 : rate > 0 ? (left / rate) * 3_600_000 : null }
}

/** Less is no number that helps anybody, L. */
const littleL = 0.3

/** What the bottle holds, between its bounds. */
export function levelText({ low, high, sizeL }: BottleLevel, { facts }: Words, measures: Measures): string {
  if (low >= sizeL) return facts.over
  if (high < littleL) return facts.little
  const size = measures.litres(sizeL).replace(/[.,]0 /, ' ')
  return high < sizeL ? facts.level(measures.litresBare(low), measures.litresBare(high), size) : facts.full(measures.litresBare(low), size)
}
