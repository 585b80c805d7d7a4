import type { Call } from '../../../server/contract/vocabulary.ts'
import type { FiringRows } from './rows.ts'
import type { Told } from './watch.ts'

// Scored as recorded practice firings are: good condensate earns 1, tar-laden costs 2, watery 0.25 a kilogram, over the best window.

export type Span = readonly [fromH: number, toH: number]

/** Collecting runs while a start stands and no stop or seal does; a withdrawn one reopens it. Hours after lighting. */
export function windowsOf(calls: Told['calls']): Span[] {
  const standing = new Set<Call>()
  const spans: Span[] = []
  let from: number | null = null
  for (const { call, state, at } of calls) {
    if (state === 'due') standing.add(call)
    else if (state === 'withdrawn') standing.delete(call)
    const collecting = standing.has('start-collecting') && !standing.has('stop-collecting') && !standing.has('seal')
    if (collecting) from ??= at
    else if (from !== null) {
      spans.push([from, at])
      from = null
    }
  }
  if (from !== null) spans.push([from, Infinity])
  return spans
}

/** Value caught over the best that could have been, -1 at worst. */
export function capturedIn({ minutes, bestValue }: Pick<FiringRows, 'minutes' | 'bestValue'>, spans: readonly Span[]): number {
  let value = 0
  minutes.forEach(([good, watery, tarry], m) => {
    if (spans.some(([from, to]) => m / 60 >= from && m / 60 < to)) value += good - 2 * tarry - 0.25 * watery
  })
  if (bestValue > 0.3) return Math.max(-1, value / bestValue)
  return spans.length > 0 && value < -0.1 ? -1 : 1
}

export const causes = [
  'never started',
  'started for nothing',
  'start early',
  'start late',
  'stop early',
  'stop late',
  'in between',
] as const
export type Cause = (typeof causes)[number]

/** What a firing fell short of 1 by, by cause: each edge against the true one with the other edge true; the rest lies in between. */
export function lostBy(rows: FiringRows, spans: readonly Span[]): Partial<Record<Cause, number>> {
  const lost = 1 - capturedIn(rows, spans)
  const first = spans[0]
  const last = spans[spans.length - 1]
  const { start, stop } = rows
  if (start === null || stop === null) return { 'started for nothing': lost }
  if (!first || !last) return { 'never started': lost }
  const byStart = 1 - capturedIn(rows, first[0] < stop ? [[first[0], stop]] : [])
  const byStop = 1 - capturedIn(rows, last[1] > start ? [[start, last[1]]] : [])
  return {
    [first[0] < start ? 'start early' : 'start late']: byStart,
    [last[1] < stop ? 'stop early' : 'stop late']: byStop,
    'in between': lost - byStart - byStop,
  }
}

const most = 1440

/** Interval score of an 80 % range, minutes: its width, and ten times what the truth lies outside it (Gneiting and Raftery 2007). */
export function intervalScore(earliest: number, latest: number, real: number): number {
  if (latest < earliest) return most
  const out = Math.max(0, earliest - real, real - latest)
  return Math.min(most, 60 * (latest - earliest) + 600 * out)
}

export const forecastCalls = ['start-collecting', 'stop-collecting', 'seal'] as const
export type ForecastCall = (typeof forecastCalls)[number]

/** One range that was told before its call was really due; hours after lighting. */
export interface Ahead {
  firing: string
  call: ForecastCall
  at: number
  earliest: number
  latest: number
  real: number
}

export function aheadOf({ rows, forecasts }: { rows: FiringRows } & Pick<Told, 'forecasts'>): Ahead[] {
  const real = { 'start-collecting': rows.start, 'stop-collecting': rows.stop, seal: rows.seal }
  return forecasts.flatMap(({ call, at, earliest, latest }) => {
    const known = forecastCalls.find((one) => one === call)
    const due = known === undefined ? null : real[known]
    return known === undefined || due === null || at >= due ? [] : [{ firing: rows.name, call: known, at, earliest, latest, real: due }]
  })
}
