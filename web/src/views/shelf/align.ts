import type { Ms } from '../../../../server/contract/fold.ts'
import type { Phase } from '../../../../server/contract/vocabulary.ts'
import type { WholeFiring } from '../../lib/api/api.ts'
import { litAtOf } from './account.ts'

export type Alignment = 'lighting' | 'clock' | Phase

/** The moment of a firing that stands at zero; null where it has none. By the clock it is midnight before lighting, of this place. */
export function zeroOf(firing: WholeFiring, alignment: Alignment): Ms | null {
  if (alignment === 'lighting') return litAtOf(firing)
  if (alignment === 'clock') return new Date(litAtOf(firing)).setHours(0, 0, 0, 0)
  return firing.phases.find((span) => span.phase === alignment)?.from ?? null
}

/** Dash and weight of the lines one to six: each is told from every other without its tone. Lengths in pixels. */
export const strokes = [
  { width: 4.5, dash: '' },
  { width: 2.5, dash: '12 7' },
  { width: 4, dash: '1 8' },
  { width: 1.5, dash: '' },
  { width: 3, dash: '16 5 2 5' },
  { width: 1.5, dash: '5 4' },
] as const

/** A path through the points with gaps left open. */
export function linePath(
  t: readonly Ms[],
  values: readonly (number | null)[],
  x: (at: Ms) => number,
  y: (value: number) => number,
): string {
  let pen = 'M'
  let path = ''
  t.forEach((at, index) => {
    const value = values[index] ?? null
    if (value === null) pen = 'M'
    else {
      path += `${pen}${x(at).toFixed(1)} ${y(value).toFixed(1)}`
      pen = 'L'
    }
  })
  return path
}

/** Means over stretches of a length, ms; a stretch ends at a gap, and the gap stays. */
export function calmed(t: readonly Ms[], values: readonly (number | null)[], stretchMs: number): { t: Ms[]; values: (number | null)[] } {
  const calm: { t: Ms[]; values: (number | null)[] } = { t: [], values: [] }
  let sum = 0
  let sumT = 0
  let count = 0
  const flush = (): void => {
    if (count === 0) return
    calm.t.push(sumT / count)
    calm.values.push(sum / count)
    sum = sumT = count = 0
  }
  let began = -Infinity
  t.forEach((at, index) => {
    const value = values[index] ?? null
    if (value === null || at - began >= stretchMs) {
      flush()
      began = at
    }
    if (value === null) {
      calm.t.push(at)
      calm.values.push(null)
    } else {
      sum += value
      sumT += at
      count += 1
    }
  })
  flush()
  return calm
}

/** Round steps so that about `most` of them fill the span. */
export function stepOf(span: number, most: number, steps: readonly number[]): number {
  return steps.find((step) => span / step <= most) ?? steps.at(-1) ?? span
}
