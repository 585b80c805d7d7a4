import type { Curve } from '../../../../server/contract/live.ts'
import type { SeriesKey } from './feed.svelte.ts'

export interface Line {
  /** Custom property of the tone. */
  tone: string
  width: number
  dash: number[]
}

/** Channels are told apart by weight and dash as well as by tone. */
export const lines: Record<SeriesKey, Line> = {
  firebox: { tone: '--fire', width: 2.5, dash: [2, 4] },
  wall: { tone: '--ink', width: 2, dash: [] },
  smoke: { tone: '--mid', width: 4.5, dash: [] },
  'smoke-estimated': { tone: '--mid', width: 4.5, dash: [12, 7] },
  outlet: { tone: '--water', width: 3, dash: [] },
  core: { tone: '--ink', width: 2, dash: [10, 4, 2, 4] },
  ambient: { tone: '--line', width: 1.5, dash: [6, 4] },
  bottle: { tone: '--line', width: 1.5, dash: [1, 3] },
  co: { tone: '--line', width: 1.5, dash: [1, 6] },
}

const drawnKeys: SeriesKey[] = ['firebox', 'wall', 'smoke', 'smoke-estimated', 'outlet', 'core']

/** The series that are drawn, in a fixed order. Where a probe reads the smoke, its estimate is not drawn beside it. */
export function drawnSeries(curve: Curve): Curve['series'] {
  const of = (key: SeriesKey): Curve['series'][number] => curve.series.find((one) => one.key === key) ?? { key, values: [] }
  const probed = of('smoke').values.some((value) => value !== null)
  return drawnKeys.map((key) => (key === 'smoke-estimated' && probed ? { key, values: [] } : of(key)))
}

export function tone(name: string): string {
  return getComputedStyle(document.documentElement).getPropertyValue(name).trim()
}
