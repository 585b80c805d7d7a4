import type { Correction } from '../../../server/domain/estimate/correction.ts'
import { classesNow } from '../../../server/domain/estimate/correction.ts'
import type { Settings } from '../../../server/domain/estimate/settings.ts'
import { emptyStanding, look } from '../../../server/domain/estimate/standing.ts'

/** One firing as the estimator saw it every few minutes, with the truth beside it. Times in hours after lighting. */
export interface FiringRows {
  name: string
  smoke: boolean
  kind: string
  /** [good, watery, tarry] kg of each minute. */
  minutes: [number, number, number][]
  bestValue: number
  start: number | null
  stop: number | null
  seal: number | null
  /** When the person sealed. */
  sealed: number
  hours: number[]
  /** Condensate an hour as estimated, kg. */
  flow: number[]
  /** True smoke, °C; null where it is not known. */
  smokeC: (number | null)[]
  x: number[][]
  /** Each range that was asked for before its call was really due: when, and the signs it is told from. */
  ranges: RangeRow[]
}

export interface RangeRow {
  call: 'start-collecting' | 'stop-collecting' | 'seal'
  at: number
  signs: number[]
}

export interface Decision {
  start: number | null
  stop: number | null
}

const leastFlowKgH = 0.3

/** What the ensemble's own advice would have been, from the rows alone. */
export function decide(rows: FiringRows, correction: Correction, set: Settings): Decision {
  const st = emptyStanding()
  const out: Decision = { start: null, stop: null }
  let before = 0
  rows.hours.forEach((h, i) => {
    const minutes = (h - before) * 60
    before = h
    if (h < 0.4) return
    const x = Float64Array.from(rows.x[i] ?? [])
    const c = classesNow(correction, x)
    const worth = Math.max(leastFlowKgH, rows.flow[i] ?? 0) * (c.good - 2 * c.tarry - 0.25 * c.watery)
    look(st, set, worth, false, minutes, rows.smoke)
    if (st.start) out.start ??= h
    if (st.stop) out.stop ??= h
  })
  return out
}
