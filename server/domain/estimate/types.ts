import type { Charge, Estimate, KilnConfig, Ms, Reason } from '../../contract/fold.ts'
import type { Lesson, Prior } from '../../contract/learnt.ts'
import type { ForecastView, TimeRange } from '../../contract/live.ts'
import type { Call, DripLook, Opening, SmokeLook, Weather } from '../../contract/vocabulary.ts'

/** The channels on the estimator's grid of 10 s: mean of the good samples of those 10 s after calibration; null when there were none. */
export interface GridReadings {
  at: Ms
  fireboxC: number | null
  wallC: number | null
  outletC: number | null
  smokeC: number | null
  ambientC: number | null
  coreC: number | null
  bottleKg: number | null
}

/** What the operator did or saw since the last grid step, with its own time (back-dated entries may lie earlier). */
export type Evidence = { at: Ms } & (
  | { kind: 'lit' }
  | { kind: 'smoke'; look: SmokeLook }
  | { kind: 'drip'; look: DripLook }
  | { kind: 'fed' }
  | { kind: 'wetted' }
  | { kind: 'bottle'; litres: number }
  | { kind: 'air'; mouth?: Opening; chimney?: Opening }
  | { kind: 'stopped-feeding' }
  | { kind: 'weather'; weather: Weather }
  | { kind: 'charge'; charge: Charge }
  | { kind: 'sealed' }
  | { kind: 'opened' }
  /** What earlier firings of this kiln taught has changed; counts only before lighting. */
  | { kind: 'known'; prior: Prior | undefined }
)

/** What the estimator would have the operator do; the calls' state machine adds dwell, precedence of what was seen, and words. */
export interface Advice {
  /** Worth of collecting now against waiting, per hour, smoothed; positive: collect. Null before there is an estimate. */
  collectWorthPerH: number | null
  startCollecting: boolean
  stopCollecting: boolean
  seal: boolean
  /** Upper bound (one-sided 99.9 %) of the hottest part of the sealed charge, °C; null while not sealed. */
  hottestUpperC: number | null
  /** Tells an air leak: the sealed kiln cools slower than any tight member, or warms. */
  airLeak: boolean
  because: Partial<Record<Call, Reason[]>>
  sure: 'low' | 'middle' | 'high'
}

export interface EstimatorForecast {
  calls: Partial<Record<Call, TimeRange>>
  view: ForecastView
}

/** A pure, deterministic estimator with explicit state. */
export interface Estimator<S> {
  version: number
  start(config: KilnConfig): S
  /** One grid step (every 10 s, gaps included). May reuse the memory of `state`. */
  step(state: S, readings: GridReadings, evidence: readonly Evidence[]): S
  estimate(state: S): Estimate | null
  advice(state: S): Advice
  /** Members run on without readings. Called every five minutes and when a call changes. */
  forecast(state: S): EstimatorForecast
  /** What this firing taught of its kiln; null before it is sealed, or where it taught nothing. */
  lesson(state: S): Lesson | null
  freeze(state: S): Uint8Array
  thaw(bytes: Uint8Array): S
}
