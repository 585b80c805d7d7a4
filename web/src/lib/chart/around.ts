import { defaultLimits, type Ms } from '../../../../server/contract/fold.ts'
import type { Curve, FiringSummary, ForecastView } from '../../../../server/contract/live.ts'
import type { Words } from '../../words/en.ts'
import type { Measures } from '../words/measures.ts'
import type { Around } from './draw.ts'
import { drawnSeries } from './lines.ts'

interface Told {
  curve: Curve
  /** Null for a firing that is over. */
  now: Ms | null
  forecast: ForecastView | null
  ghost: FiringSummary | null
  words: Words
  measures: Measures
  /** Little room: short names. */
  narrow: boolean
}

/** Names of the lines, the band and the marks, in the person's words and units. */
export function aroundOf({ curve, now, forecast, ghost, words, measures, narrow }: Told): Around {
  const labels: Around['labels'] = []
  for (const { key, values } of drawnSeries(curve)) {
    const value = values.findLast((one) => one !== null)
    if (value === null || value === undefined) continue
    const text = key === 'smoke-estimated' ? `~ ${narrow ? words.shortRoles.smoke : words.smokeEstimated}` : words.shortRoles[key]
    labels.push({ key, text, fire: key === 'firebox', value, t: now ?? curve.t.at(-1) ?? curve.to })
  }
  const shift = ghost ? curve.from - ghost.startedAt : 0
  return {
    now,
    forecast,
    ghost: ghost && { t: ghost.spark.t.map((t) => t + shift), values: ghost.spark.smoke },
    band: {
      from: defaultLimits.smokeStartC,
      to: defaultLimits.smokeStopC,
      fromLabel: words.chart.start(String(measures.degrees(defaultLimits.smokeStartC))),
      toLabel: words.chart.stop(String(measures.degrees(defaultLimits.smokeStopC))),
    },
    marks: curve.marks.filter(worthAMark),
    labels,
    fireTick: { value: 900, text: String(measures.degrees(900)) },
    font: "'Atkinson Hyperlegible Next', 'Noto Sans Thai', sans-serif",
  }
}

const quietActs = ['observe', 'glass', 'note', 'arm', 'acknowledge', 'shelve', 'unshelve', 'weather', 'load', 'reading']

/** Turns, and work at the kiln; an alarm once, when it came. Everything else stands in the log. */
function worthAMark({ kind, code, state }: Curve['marks'][number]): boolean {
  if (kind === 'act') return !quietActs.includes(code)
  return kind === 'call' ? state === 'due' : state === 'unacknowledged'
}
