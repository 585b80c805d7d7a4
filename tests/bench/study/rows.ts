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
  hours: number[]
  /** Condensate an hour as estimated, kg. */
  flow: number[]
  /** True smoke, °C; null where it is not known. */
  smokeC: (number | null)[]
  x: number[][]
}

export interface Decision {
  start: number | null
  stop: number | null
  seal: number | null
}

const leastFlowKgH = 0.3

const [charredAt, smokeAt] = [5, 14]

function doneAt(rows: FiringRows, i: number, set: Settings): boolean {
  const charred = (rows.x[i]?.[charredAt] ?? 0) / 3
  return rows.smoke ? (rows.x[i]?.[smokeAt] ?? 0) * 100 > set.sealSmokeC && charred > set.sealSmokeChar : charred > set.sealCharThree
}

/** What the advice would have been, from the rows alone. */
export function decide(rows: FiringRows, correction: Correction, set: Settings): Decision {
  const st = emptyStanding()
  const out: Decision = { start: null, stop: null, seal: null }
  let before = 0
  rows.hours.forEach((h, i) => {
    const minutes = (h - before) * 60
    before = h
    if (h < 0.4) return
    const x = Float64Array.from(rows.x[i] ?? [])
    const c = classesNow(correction, x)
    const worth = Math.max(leastFlowKgH, rows.flow[i] ?? 0) * (c.good - 2 * c.tarry - 0.25 * c.watery)
    look(st, set, worth, doneAt(rows, i, set), minutes, rows.smoke)
    if (st.start) out.start ??= h
    if (st.stop) out.stop ??= h
    if (st.seal) out.seal ??= h
  })
  return out
}

/** Value caught over the best that could have been, as the scoring of recorded firings does it: -1 at worst. */
export function captured(rows: Pick<FiringRows, 'minutes' | 'bestValue'>, d: Decision): number {
  const end = Math.min(d.stop ?? Infinity, d.seal ?? Infinity) * 60
  let value = 0
  rows.minutes.forEach(([good, watery, tarry], m) => {
    if (d.start !== null && m >= d.start * 60 && m < end) value += good - 2 * tarry - 0.25 * watery
  })
  if (rows.bestValue > 0.3) return Math.max(-1, value / rows.bestValue)
  return d.start !== null && value < -0.1 ? -1 : 1
}
