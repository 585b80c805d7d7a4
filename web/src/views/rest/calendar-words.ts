import { dateLocale } from '../../lib/words/date-locale.ts'
import type { Measures } from '../../lib/words/measures.ts'

/** A calendar date as this person reads it: it has no hour, so it is shown as the day it names wherever the tablet stands. */
export function dateWords(date: string, language: string, year = false): string {
  const at = Date.parse(`${date}T00:00:00Z`)
  if (Number.isNaN(at)) return date
  const form = new Intl.DateTimeFormat(dateLocale(language), {
    day: 'numeric',
    month: 'long',
    ...(year ? { year: 'numeric' } : {}),
    timeZone: 'UTC',
  })
  return form.format(at)
}

/** Minutes after midnight as a clock time of that day. */
export function minuteWords(minutes: number): string {
  const whole = ((Math.round(minutes) % 1440) + 1440) % 1440
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`
}

/** Millilitres below a litre, then the unit that this person reads; no decimals that say nothing. */
export function amountWords(ml: number, measures: Measures): string {
  if (ml < 1000) return `${plain(ml, ml < 100 ? 1 : 0, measures)} mL`
  return measures.volumeUnit() === 'L' ? `${plain(ml / 1000, 1, measures)} L` : measures.litres(ml / 1000)
}

function plain(value: number, digits: number, measures: Measures): string {
  const step = digits === 1 ? 10 : 1
  const rounded = Math.round(value * step) / step
  return measures.number(rounded, Number.isInteger(rounded) ? 0 : digits)
}

/** Calendar date at the site of a moment. */
export function dateOfMs(at: number, offsetMin: number): string {
  return new Date(at + offsetMin * 60_000).toISOString().slice(0, 10)
}
