import { defaultLimits, type Ms } from '../../../../server/contract/fold.ts'
import type { Curve, FiringSummary, ForecastView } from '../../../../server/contract/live.ts'
import type { Words } from '../../words/en.ts'
import type { Measures } from '../words/measures.ts'
import type { Around } from './draw.ts'
import { drawnKeys } from './lines.ts'

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
  for (const key of drawnKeys) {
    const values = curve.series.find((one) => one.key === key)?.values
    const last = values?.findLastIndex((value) => value !== null) ?? -1
    const value = values?.[last]
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
    marks: curve.marks,
    labels,
    fireTick: { value: 900, text: String(measures.degrees(900)) },
    font: "'Atkinson Hyperlegible Next', 'Noto Sans Thai', sans-serif",
  }
}
