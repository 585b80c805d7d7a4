/** What was wrong with something a person entered for the rest of the job. The page makes the sentence that says what to enter. */
export const entryProblemCodes = [
  'not-a-number',
  'missing',
  'too-small',
  'too-large',
  'wrong-unit',
  'zero-tank',
  'ratio-reversed',
  'moisture-not-wet-basis',
  'heavier-when-dry',
  'density-in-kg-per-m3',
  'not-a-date',
  'date-in-future',
  'id-taken',
  'no-such-lot',
  'no-such-entry',
  'wrong-kind-of-lot',
  'same-lot-twice',
  'more-than-there-is',
  'layers-exceed-lot',
  'layers-not-measured',
  'correction-breaks-stock',
  'clock-unconfirmed',
  'too-strong-for-plants',
  'not-for-feed',
  'lot-unrested',
  'lot-failed',
  'lot-unmeasured',
  'interval-too-short',
  'date-too-early',
  'no-sunset',
  'no-answer',
] as const
export type EntryProblemCode = (typeof entryProblemCodes)[number]

export interface EntryProblem {
  code: EntryProblemCode
  /** Name of the field, so that a form can stand the sentence beside it. */
  field: string
  /** Numbers and words for the sentence: what was given, bounds, unit, a date. */
  params: Record<string, string | number>
}

export type Checked<T> = { ok: true; value: T } | { ok: false; problems: EntryProblem[] }
