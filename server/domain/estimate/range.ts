import type { Hours } from './learned/horizon.ts'

// A range told of a call, from two opinions. Where its edges lie follows from what both say, how unsure each is and how far they differ,
// and not from one width for all. The forms are fitted on simulated firings for the least interval score (`npm run study-fit`).

/** Weights of the signs below. */
export type RangeForm = readonly number[]

export interface RangeForms {
  earliest: RangeForm
  likely: RangeForm
  latest: RangeForm
}

export const rangeSignCount = 8

/** Signs of one range; hours from now. `own` is what the members of the ensemble say, `learned` what firings with such signs have taken. */
export function rangeSigns(own: Hours, learned: Hours): number[] {
  const [ownLow, ownMiddle, ownHigh] = own
  const [low, middle, high] = learned
  return [1, middle, ownMiddle, middle - low, high - middle, ownMiddle - ownLow, ownHigh - ownMiddle, Math.abs(middle - ownMiddle)]
}

/** Value of a form at its signs, hours. */
export function formAt(form: RangeForm, signs: readonly number[]): number {
  return signs.reduce((sum, sign, i) => sum + sign * (form[i] ?? 0), 0)
}

/** The range, hours from now: in order and not in the past. */
export function rangeFrom({ earliest, likely, latest }: RangeForms, signs: readonly number[]): Hours {
  const low = Math.max(0, formAt(earliest, signs))
  const middle = Math.max(low, formAt(likely, signs))
  return [low, middle, Math.max(middle, formAt(latest, signs))]
}
