import type { Ms } from '../../../../server/contract/fold.ts'
import { dateLocale } from '../../lib/words/date-locale.ts'

/** Time of day where the box stands, which is what its clock is asked about; the tablet may be set to another zone. */
export const timeThere = (at: Ms, offsetMin: number, language: string): string =>
  new Intl.DateTimeFormat(dateLocale(language), { hour: '2-digit', minute: '2-digit', hourCycle: 'h23', timeZone: 'UTC' }).format(
    at + offsetMin * 60_000,
  )

export const dateThere = (at: Ms, offsetMin: number, language: string): string =>
  new Intl.DateTimeFormat(dateLocale(language), {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    calendar: 'gregory',
    timeZone: 'UTC',
  }).format(at + offsetMin * 60_000)
