import { defaultLimits, type Ms } from '../../../../server/contract/fold.ts'
import type { Curve, ForecastView, PhaseSpan } from '../../../../server/contract/live.ts'
import type { Words } from '../../words/en.ts'
import type { Measures } from '../words/measures.ts'
import type { Around } from './draw.ts'
import type { Ghost } from './feed.svelte.ts'
import { drawnSeries } from './lines.ts'

const usualBand = { startC: defaultLimits.smokeStartC, stopC: defaultLimits.smokeStopC }
/** What nobody saw was measured all the same: the lines under it are to be read. */
const unwatchedHeight = 0.08
/** A channel counts as lost after a minute (wire format, 7): so long without any is blind time. */
const blindMs = 60_000

interface Told {
  curve: Curve
  /** Null for a firing that is over. */
  now: Ms | null
  forecast: ForecastView | null
  ghost: Ghost | null
  /** The kiln's own limits; the usual ones where they are not known. */
  band?: { startC: number; stopC: number } | undefined
  words: Words
  measures: Measures
  /** Little room: short names. */
  narrow: boolean
}

/** Names of the lines, the band and the marks, in the person's words and units. */
export function aroundOf({ curve, now, forecast, ghost, band = usualBand, words, measures, narrow }: Told): Around {
  const labels: Around['labels'] = []
  for (const { key, values } of drawnSeries(curve)) {
    const value = values.findLast((one) => one !== null)
    if (value === null || value === undefined) continue
    const text = key === 'smoke-estimated' ? `~ ${narrow ? words.shortRoles.smoke : words.smokeEstimated}` : words.shortRoles[key]
    labels.push({ key, text, fire: key === 'firebox', value, t: now ?? curve.t.at(-1) ?? curve.to })
  }
  return {
    now,
    forecast,
    ghost: ghost && { ...ghostLine(ghost, curve), label: words.chart.before },
    blind: [
      ...blindSpans(curve, now).map((span) => ({ ...span, height: 1, label: words.chart.blind })),
      ...unwatchedSpans(curve, now).map((span) => ({ ...span, height: unwatchedHeight, label: words.alarms['nobody-watching'].name })),
    ],
    band: {
      from: band.startC,
      to: band.stopC,
      fromLabel: words.chart.start(String(measures.degrees(band.startC))),
      toLabel: words.chart.stop(String(measures.degrees(band.stopC))),
    },
    marks: curve.marks.filter(worthAMark),
    labels,
    fireTicks: [900, 0].map((value) => ({ value, text: String(measures.degrees(value)) })),
    font: "'Atkinson Hyperlegible Next', 'Noto Sans Thai', sans-serif",
  }
}

const quietActs = ['observe', 'glass', 'note', 'arm', 'acknowledge', 'shelve', 'unshelve', 'weather', 'load', 'reading']

/** Turns, and work at the kiln; an alarm once, when it came. Everything else stands in the log. */
function worthAMark({ kind, code, state }: Curve['marks'][number]): boolean {
  if (kind === 'act') return !quietActs.includes(code)
  if (kind === 'call') return state === 'due'
  // that nobody looked is drawn as a span
  return state === 'unacknowledged' && code !== 'nobody-watching'
}

const litOf = (ribbon: readonly PhaseSpan[], otherwise: Ms): Ms => ribbon.find(({ phase }) => phase !== 'idle')?.from ?? otherwise

/** The earlier firing's smoke, or its wall where it had no smoke probe, moved so that both were lit at the same place. */
function ghostLine({ summary, curve: earlier }: Ghost, curve: Curve): { t: Ms[]; values: readonly (number | null)[] } {
  const shift = litOf(curve.ribbon, curve.from) - litOf(earlier?.ribbon ?? summary.phases, summary.startedAt)
  const line = (['smoke', 'smoke-estimated', 'wall'] as const)
    .map((key) => earlier?.series.find((one) => one.key === key)?.values)
    .find((values) => values?.some((value) => value !== null))
  const known = summary.spark.smoke.some((value) => value !== null) ? summary.spark.smoke : summary.spark.wall
  return { t: (line && earlier ? earlier.t : summary.spark.t).map((t) => t + shift), values: line ?? known }
}

/** When nothing at all was heard, from the last number before to the first after, or to now. */
export function blindSpans(curve: Pick<Curve, 't' | 'series'>, now: Ms | null): { from: Ms; to: Ms }[] {
  const spans: { from: Ms; to: Ms }[] = []
  let heard: Ms | null = null
  const add = (to: Ms): void => {
    if (heard !== null && to - heard > blindMs) spans.push({ from: heard, to })
  }
  curve.t.forEach((t, index) => {
    if (curve.series.every(({ values }) => (values[index] ?? null) === null)) return
    // points that the service thinned lie apart without a null between them
    if (index > 0 && curve.series.every(({ values }) => (values[index - 1] ?? null) === null)) add(t)
    heard = t
  })
  if (now !== null) add(now)
  return spans
}

/** When no page was awake: from the alarm to its end, or to now. */
export function unwatchedSpans({ marks, to }: Pick<Curve, 'marks' | 'to'>, now: Ms | null): { from: Ms; to: Ms }[] {
  const spans: { from: Ms; to: Ms }[] = []
  let from: Ms | null = null
  for (const { t, kind, code, state } of marks) {
    if (kind !== 'alarm' || code !== 'nobody-watching') continue
    if (state === 'unacknowledged') from ??= t
    else if (state === 'normal' || state === 'suppressed') {
      if (from !== null) spans.push({ from, to: t })
      from = null
    }
  }
  if (from !== null) spans.push({ from, to: now ?? to })
  return spans
}
