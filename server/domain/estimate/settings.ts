import { defaultTrust, type Trust } from './likelihood.ts'

/** How the estimator works and decides; values chosen on simulated firings (tests/bench/study). */
export interface Settings {
  trust: Trust
  /** Kiln steps spent on moves at each grid step: about 0.3 ms. */
  moveSteps: number
  /** Smoothed worth an hour above which to start, and below which to stop, kg. */
  startAbove: number
  stopBelow: number
  stopBelowSmoke: number
  startConfirmMin: number
  stopConfirmMin: number
  stopConfirmSmokeMin: number
  /** Smoothing of the worth, minutes, without and with a smoke probe. */
  smoothMin: number
  smoothSmokeMin: number
  /** Sealing is due when the degree of charring has passed this while the wall climbs no more, K/h, or the smoke is over this, °C. */
  sealChar: number
  sealFlatKPerH: number
  sealSmokeC: number
  /** With three probes the members run warm, and with them ahead: due all the same when so many times as long has gone as to this degree. */
  sealNearChar: number
  sealOverNear: number
  sealConfirmMin: number
}

export const defaultSettings: Settings = {
  trust: defaultTrust,
  moveSteps: 150,
  startAbove: 0.1,
  stopBelow: -0.5,
  stopBelowSmoke: 0,
  startConfirmMin: 8,
  stopConfirmMin: 12,
  stopConfirmSmokeMin: 8,
  smoothMin: 12,
  smoothSmokeMin: 10,
  sealChar: 0.93,
  sealFlatKPerH: 18,
  sealSmokeC: 230,
  sealNearChar: 0.9,
  sealOverNear: 1.25,
  sealConfirmMin: 12,
}
