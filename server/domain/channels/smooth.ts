/**
 * Exponential smoothing at irregular times (instrument facts 4): for a constant input the result at a time does not depend on how it was sampled.
 * For display only; alarms take the unsmoothed value.
 */
export function smooth(before: number, value: number, passedS: number, tauS: number): number {
  return before + (1 - Math.exp(-passedS / tauS)) * (value - before)
}
