import { forecastLines } from './guess.ts'
import type { FiringRows } from './rows.ts'
import { type Ahead, capturedIn, type Cause, causes, lostBy, type Span } from './score.ts'

/** One firing as played in one way. Hours after lighting. */
export interface Played {
  as: 'smoke probe' | 'smoke probe fails' | 'three probes'
  firing: number
  rows: FiringRows
  spans: Span[]
  ahead: Ahead[]
  seal: number | null
  open: number | null
  seen: boolean
  below45H: number | null
  below50H: number | null
  sealedPart: boolean
}

export interface Tally {
  played: Played[]
  rules: { name: string; score: number }[]
}

export const emptyTally = (): Tally => ({ played: [], rules: [] })
export const note = (tally: Tally, played: Played): void => void tally.played.push(played)

const mean = (a: readonly number[]): number => a.reduce((x, y) => x + y, 0) / a.length
const middle = (a: readonly number[]): number => [...a].sort((x, y) => x - y)[Math.floor((a.length - 1) / 2)] ?? NaN
const scoreOf = ({ rows, spans }: Played): number => capturedIn(rows, spans)

/** The tables of the study as text. */
export function tableOf({ played, rules }: Tally): string {
  const lines = ['value captured                          firings   mean  worst']
  const group = (name: string, scores: number[]): void => {
    if (scores.length > 0)
      lines.push(
        `${name.padEnd(40)} ${String(scores.length).padStart(5)}  ${mean(scores).toFixed(3).padStart(6)}  ${Math.min(...scores)
          .toFixed(2)
          .padStart(5)}`,
      )
  }
  const ways = ['smoke probe', 'smoke probe fails', 'three probes'] as const
  for (const way of ways) {
    const these = played.filter(({ as }) => as === way)
    group(way, these.map(scoreOf))
    group('  of these with sights', these.filter(({ seen }) => seen).map(scoreOf))
    group('  of these that catch', these.filter(({ rows }) => rows.stop !== null).map(scoreOf))
  }
  for (const name of new Set(rules.map((rule) => rule.name)))
    group(
      name,
      rules.filter((rule) => rule.name === name).map(({ score }) => score),
    )
  lines.push(
    '',
    ...failureLines(played),
    '',
    ...lossLines(played, ways),
    '',
    ...forecastLines(played.flatMap(({ as, ahead }) => (as === 'smoke probe fails' ? [] : ahead))),
    '',
    ...callLines(played),
  )
  return lines.join('\n')
}

/** The same firings with a probe that lives and with one that fails half way through the best window. */
function failureLines(played: readonly Played[]): string[] {
  const failing = played.filter(({ as }) => as === 'smoke probe fails')
  const costs = failing.flatMap((one) => {
    const whole = played.find(({ as, firing }) => as === 'smoke probe' && firing === one.firing)
    return whole ? [scoreOf(whole) - scoreOf(one)] : []
  })
  if (costs.length === 0) return []
  return [
    `a smoke probe that fails while collecting costs ${mean(costs).toFixed(3)} (median ${middle(costs).toFixed(3)}) in ${costs.length} firings`,
  ]
}

function lossLines(played: readonly Played[], ways: readonly Played['as'][]): string[] {
  const lines = [`lost, mean a firing      ${ways.map((way) => way.padStart(18)).join('')}`]
  const lost = played.map((one) => ({ as: one.as, by: lostBy(one.rows, one.spans) }))
  const cell = (way: Played['as'], cause: Cause): string => {
    const these = lost.filter(({ as }) => as === way)
    const hit = these.filter(({ by }) => Math.abs(by[cause] ?? 0) > 0.005)
    return these.length === 0 ? '' : `${mean(these.map(({ by }) => by[cause] ?? 0)).toFixed(3)} (${hit.length})`
  }
  for (const cause of causes) lines.push(`${cause.padEnd(25)}${ways.map((way) => cell(way, cause).padStart(18)).join('')}`)
  return lines
}

function callLines(played: readonly Played[]): string[] {
  const lines: string[] = []
  const never = played.filter(({ rows }) => rows.stop === null)
  const falseStarts = never.filter(({ rows, spans }) => rows.kind === 'never-catches' && spans.length > 0).length
  lines.push(`starts in firings that never catch: ${falseStarts} of ${never.filter(({ rows }) => rows.kind === 'never-catches').length}`)
  const due = played.filter(({ as, rows }) => rows.seal !== null && as !== 'smoke probe fails')
  const offMin = due.flatMap(({ seal, rows }) => (seal === null || rows.seal === null ? [] : [60 * (seal - rows.seal)]))
  const missed = due.filter(({ seal, rows }) => seal === null || seal >= rows.sealed).length
  lines.push(
    `|seal| median ${middle(offMin.map(Math.abs)).toFixed(0)} min (${middle(offMin).toFixed(0)}), missed ${missed} of ${due.length}`,
  )
  const sealed = played.filter(({ sealedPart, open }) => sealedPart && open !== null)
  if (sealed.length > 0) {
    const unsafe = sealed.filter(({ open, below50H }) => below50H === null || (open ?? 0) < below50H).length
    const late = sealed.flatMap(({ open, below45H }) => (below45H === null ? [] : [(open ?? 0) - below45H]))
    lines.push(`trial openings called ${sealed.length}, unsafe ${unsafe}, late by ${middle(late).toFixed(1)} h (median)`)
  }
  return lines
}
