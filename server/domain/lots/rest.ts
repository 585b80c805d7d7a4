import type { CondensateLot, DateText, RestView } from '../../contract/lots.ts'
import { addDays, daysBetween } from '../entered/calendar.ts'
import { problem } from '../entered/number.ts'

/** Certification council of the Japanese trade, standard of 29 November 2006: 90 days or more. */
export const restDays = 90
/** Second mark: GB/T 31734-2015 and a Japanese producer norm ask six months; counted as 180 days. */
export const sixMonthsDays = 180

/** Marks by calendar date; none at all while the date of filling or today's date is in doubt. */
export function restOf(lot: Pick<CondensateLot, 'filled'>, today: { date: DateText; clockSure: boolean }): RestView {
  if (lot.filled === null) return { state: 'refused', problem: problem('clock-unconfirmed', 'filled') }
  if (!today.clockSure) return { state: 'refused', problem: problem('clock-unconfirmed', 'today', { date: today.date }) }
  const restedDays = daysBetween(lot.filled, today.date)
  if (restedDays < 0) return { state: 'refused', problem: problem('date-in-future', 'filled', { date: lot.filled }) }
  return {
    state: restedDays >= sixMonthsDays ? 'six-months' : restedDays >= restDays ? 'rested' : 'resting',
    filled: lot.filled,
    restedDays,
    drawFrom: addDays(lot.filled, restDays),
    sixMonths: addDays(lot.filled, sixMonthsDays),
  }
}
