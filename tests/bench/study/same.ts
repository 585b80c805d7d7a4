import { appendFileSync } from 'node:fs'
import type { KeptLesson } from '../../../server/contract/learnt.ts'
import { priorFrom } from '../../../server/domain/learnt/compose.ts'
import { burn } from '../../../server/simulator/firing/world.ts'
import { planSame } from './same-kiln.ts'
import { aheadOf, capturedIn, intervalScore, windowsOf } from './score.ts'
import { watch, type Watched } from './watch.ts'

// Firings one after another in the same kiln, with three probes: each as if it were the first, with what those before it taught, and with
// what they taught where the first alone had a smoke probe, lent for that day.

const ways = ['as the first', 'learnt', 'lent a probe'] as const
type Way = (typeof ways)[number]

interface Scored {
  kiln: number
  behind: number
  way: Way
  captured: number
  /** Called minus true, minutes; null where either is missing. */
  stopMin: number | null
  intervalMin: number | null
}

export function playSame(kilns: number, first: number, firings: number, rows: string | undefined): string {
  const scored: Scored[] = []
  for (let k = first; k < first + kilns; k++) {
    const lessons: Record<'learnt' | 'lent a probe', KeptLesson[]> = { learnt: [], 'lent a probe': [] }
    for (let nth = 0; nth < firings; nth++) {
      const firing = burn(planSame(`same-${k}`, nth), true)
      const runs = new Map<Way, Watched>()
      const use = { smoke: false, smokeFailsAtH: null, sights: true, sealed: false }
      runs.set('as the first', watch(`k${k}-${nth}`, firing, use))
      for (const way of ['learnt', 'lent a probe'] as const) {
        const prior = priorFrom(lessons[way])
        const smoke = way === 'lent a probe' && nth === 0
        const watched = prior === undefined && !smoke ? runs.get('as the first') : watch(`k${k}-${nth}`, firing, { ...use, smoke, prior })
        if (watched === undefined) continue
        runs.set(way, watched)
        for (const lesson of watched.lessons) lessons[way].push({ firing: String(nth), at: nth, lesson })
      }
      for (const [way, watched] of runs) {
        const one = scoreOf(k, nth, way, watched)
        if (!(way === 'lent a probe' && nth === 0)) scored.push(one)
        if (rows)
          appendFileSync(rows, `${JSON.stringify({ ...one, family: firing.plan.family, kind: firing.plan.kind, ...keptOf(watched) })}\n`)
      }
      const said = ways.map(
        (way) => `${way} ${scored.findLast((one) => one.kiln === k && one.behind === nth && one.way === way)?.captured.toFixed(2) ?? '-'}`,
      )
      console.log(`kiln ${k} firing ${nth} ${firing.plan.family} ${firing.plan.kind}: ${said.join(', ')}`)
    }
  }
  return tableOf(scored, firings)
}

const keptOf = ({ rows, calls, forecasts, lessons, worth, curve }: Watched) => ({
  start: rows.start, stop: rows.stop, seal: rows.seal, sealed: rows.sealed, minutes: rows.minutes, bestValue: rows.bestValue, calls, forecasts, lessons, worth, curve,
}) // prettier-ignore

function scoreOf(kiln: number, behind: number, way: Way, watched: Watched): Scored {
  const spans = windowsOf(watched.calls)
  const to = spans.at(-1)?.[1]
  const { stop } = watched.rows
  const ahead = aheadOf(watched)
  return {
    kiln,
    behind,
    way,
    captured: capturedIn(watched.rows, spans),
    stopMin: to === undefined || stop === null ? null : 60 * (Math.min(to, watched.rows.sealed) - stop),
    intervalMin: ahead.length === 0 ? null : mean(ahead.map(({ earliest, latest, real }) => intervalScore(earliest, latest, real))),
  }
}

const mean = (a: readonly number[]): number => a.reduce((x, y) => x + y, 0) / a.length
const numbers = (a: readonly (number | null)[]): number[] => a.filter((x) => x !== null)

/** Mean and standard error of a difference, firing by firing. */
function gain(a: readonly number[]): string {
  const m = mean(a)
  const sd = Math.sqrt(a.reduce((sum, x) => sum + (x - m) * (x - m), 0) / Math.max(1, a.length - 1))
  return `${m >= 0 ? '+' : ''}${m.toFixed(3)} ± ${(sd / Math.sqrt(a.length)).toFixed(3)}`
}

function tableOf(scored: readonly Scored[], firings: number): string {
  const lines = ['behind  way            firings  captured  against the first    |stop| min  interval score min']
  const line = (name: string, these: readonly Scored[], way: Way): void => {
    const of = these.filter((one) => one.way === way)
    if (of.length === 0) return
    const gains = of.flatMap((one) => {
      const plain = these.find(({ kiln, behind, way: other }) => kiln === one.kiln && behind === one.behind && other === 'as the first')
      return plain ? [one.captured - plain.captured] : []
    })
    const off = numbers(of.map(({ stopMin }) => stopMin)).map(Math.abs)
    lines.push(
      `${name.padEnd(7)} ${way.padEnd(14)} ${String(of.length).padStart(7)}  ${mean(of.map(({ captured }) => captured))
        .toFixed(3)
        .padStart(8)}  ${(way === 'as the first' ? '' : gain(gains)).padEnd(19)}  ${mean(off).toFixed(0).padStart(10)}  ${mean(
        numbers(of.map(({ intervalMin }) => intervalMin)),
      )
        .toFixed(0)
        .padStart(18)}`,
    )
  }
  for (let n = 0; n < firings; n++)
    for (const way of ways)
      line(
        String(n),
        scored.filter(({ behind }) => behind === n),
        way,
      )
  for (const way of ways)
    line(
      '1 on',
      scored.filter(({ behind }) => behind > 0),
      way,
    )
  return lines.join('\n')
}
