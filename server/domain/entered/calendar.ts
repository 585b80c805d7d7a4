import type { Checked } from '../../contract/entry-problems.ts'
import type { DateText } from '../../contract/lots.ts'
import { accept, problem, refuse } from './number.ts'

const dayMs = 86_400_000

/** Days since 1970-01-01 of a calendar date, which has no hour and no zone. */
export function dayNumber(date: DateText): number {
  return Math.round(Date.parse(`${date}T00:00:00Z`) / dayMs)
}

export function dateOfDay(day: number): DateText {
  return new Date(day * dayMs).toISOString().slice(0, 10)
}

export function addDays(date: DateText, days: number): DateText {
  return dateOfDay(dayNumber(date) + days)
}

/** Whole calendar days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: DateText, to: DateText): number {
  return dayNumber(to) - dayNumber(from)
}

/** @returns the date when it exists in the calendar (2026-02-30 does not). */
export function readDate(field: string, text: string): Checked<DateText> {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text) || Number.isNaN(Date.parse(`${text}T00:00:00Z`)) || addDays(text, 0) !== text) {
    return refuse(problem('not-a-date', field, { given: text.slice(0, 20) }))
  }
  return accept(text)
}
