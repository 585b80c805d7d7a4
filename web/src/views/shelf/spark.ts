import type { Ms } from '../../../../server/contract/fold.ts'
import type { FiringSummary } from '../../../../server/contract/live.ts'

/** A path through the points; where a value is missing the line ends and begins anew. */
export function sparkPath(
  t: readonly Ms[],
  values: readonly (number | null)[],
  box: { width: number; height: number; mostC: number },
): string {
  const from = t[0] ?? 0
  const span = Math.max(1, (t.at(-1) ?? 1) - from)
  let pen = 'M'
  return t
    .map((at, index) => {
      const value = values[index]
      if (value === null || value === undefined) {
        pen = 'M'
        return ''
      }
      const step = `${pen}${(((at - from) / span) * box.width).toFixed(1)} ${(box.height * (1 - Math.min(1, value / box.mostC))).toFixed(1)}`
      pen = 'L'
      return step
    })
    .join('')
}

/** Where the vinegar run lies in the picture, 0 to 1; null when there was none. */
export function vinegarSpan(firing: FiringSummary, from: Ms, to: Ms): { from: number; to: number } | null {
  const spans = firing.phases.filter((span) => span.phase === 'vinegar')
  const [first, last] = [spans[0], spans.at(-1)]
  if (!first || !last) return null
  const share = (at: Ms): number => Math.min(1, Math.max(0, (at - from) / (to - from)))
  return { from: share(first.from), to: share(last.to ?? to) }
}
