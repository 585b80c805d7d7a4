import type { Checked, EntryProblem, EntryProblemCode } from '../../contract/entry-problems.ts'

export function problem(code: EntryProblemCode, field: string, params: EntryProblem['params'] = {}): EntryProblem {
  return { code, field, params }
}

export function refuse(...problems: EntryProblem[]): { ok: false; problems: EntryProblem[] } {
  return { ok: false, problems }
}

export function accept<T>(value: T): Checked<T> {
  return { ok: true, value }
}

/** @returns nothing when `value` is a number within the bounds (both included), otherwise what to enter instead. */
export function outside(field: string, value: unknown, low: number, high: number, unit = ''): EntryProblem[] {
  if (typeof value !== 'number' || !Number.isFinite(value)) return [problem('not-a-number', field, { low, high, unit })]
  if (value < low) return [problem('too-small', field, { value, low, high, unit })]
  if (value > high) return [problem('too-large', field, { value, low, high, unit })]
  return []
}
