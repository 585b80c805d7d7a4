import { defaultTrust, type Trust } from './likelihood.ts'

/** How the estimator works and decides; values chosen on simulated firings (tests/bench/study). */
export interface Settings {
  trust: Trust
  /** Kiln steps spent on moves at each grid step: about 0.3 ms. */
  moveSteps: number
  /** Worth an hour above which to start, and below which to stop, kg. */
  startAbove: number
  stopBelow: number
  /** What must still be ahead for going on although the moment says stop, kg. */
  aheadAtLeast: number
  startConfirmMin: number
  stopConfirmMin: number
  /** Degree of charring at which sealing is due. */
  sealChar: number
  sealConfirmMin: number
  /** Smoothing of the worth, minutes. */
  smoothMin: number
}

export const defaultSettings: Settings = {
  trust: defaultTrust,
  moveSteps: 150,
  startAbove: 0.1,
  stopBelow: 0,
  aheadAtLeast: 0.15,
  startConfirmMin: 8,
  stopConfirmMin: 12,
  sealChar: 0.93,
  sealConfirmMin: 10,
  smoothMin: 8,
}
