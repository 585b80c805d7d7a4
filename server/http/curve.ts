import type { Ms, Output } from '../contract/fold.ts'
import type { Curve } from '../contract/live.ts'
import type { Act } from '../contract/actions.ts'
import { spansOf } from '../runtime/shelf.ts'

interface Line {
  role: Curve['series'][number]['key']
  t: Ms[]
  value: (number | null)[]
}

/**
 * Lines with times of their own on one common column. Where a line has no point of its own it is drawn straight between its neighbours;
 * its gaps (a null, or beyond its ends) stay gaps. No point of any line is lost.
 */
export function oneColumn(lines: readonly Line[]): Pick<Curve, 't' | 'series'> {
  const t = [...new Set(lines.flatMap((line) => line.t))].sort((a, b) => a - b)
  return { t, series: lines.map((line) => ({ key: line.role, values: resampled(line, t) })) }
}

function resampled({ t, value }: Line, column: readonly Ms[]): (number | null)[] {
  let right = 0
  return column.map((at) => {
    while (right < t.length && (t[right] ?? Infinity) < at) right++
    const [t0, t1] = [t[right - 1], t[right]]
    const [v0, v1] = [value[right - 1] ?? null, value[right] ?? null]
    if (t1 === at) return v1
    if (t0 === undefined || t1 === undefined || v0 === null || v1 === null) return null
    // what lies between is no reading: two digits are enough, and a third of the bytes
    return Math.round(100 * (v0 + ((v1 - v0) * (at - t0)) / (t1 - t0))) / 100
  })
}

/** What was told and done, as marks on the curve. */
export function marksOf(outputs: readonly Output[], acts: readonly Act[]): Curve['marks'] {
  const marks: Curve['marks'] = acts.map(({ doneAt, act }) => ({ t: doneAt, kind: 'act', code: act.action }))
  for (const output of outputs) {
    if (output.kind === 'call') marks.push({ t: output.at, kind: 'call', code: output.call, state: output.state })
    if (output.kind === 'alarm') marks.push({ t: output.at, kind: 'alarm', code: output.alarm, state: output.state })
  }
  return marks.sort((a, b) => a.t - b.t)
}

export function curveOf(
  span: { from: Ms; to: Ms; end: Ms | null },
  lines: readonly Line[],
  outputs: readonly Output[],
  acts: readonly Act[],
): Curve {
  return { from: span.from, to: span.to, ...oneColumn(lines), marks: marksOf(outputs, acts), ribbon: spansOf(outputs, span.end) }
}
