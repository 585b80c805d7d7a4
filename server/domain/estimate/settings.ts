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
  /** With a smoke probe sealing is due when the smoke has passed this, °C, and the degree of charring that. */
  sealSmokeC: number
  sealSmokeChar: number
  /** With three probes, the degree of charring alone. */
  sealCharThree: number
  sealConfirmMin: number
  /** Degree of charring that counts as through in the members' own run-on. */
  sealChar: number
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
  sealSmokeC: 265,
  sealSmokeChar: 0.82,
  sealCharThree: 0.98,
  sealConfirmMin: 12,
  sealChar: 0.93,
}
