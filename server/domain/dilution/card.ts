import type { Mixture, SprayerCard } from '../../contract/dilution.ts'
import type { Checked } from '../../contract/entry-problems.ts'
import type { CondensateLot, DateText } from '../../contract/lots.ts'
import { addDays, daysBetween } from '../entered/calendar.ts'
import { accept, problem, refuse } from '../entered/number.ts'
import { notReady } from '../lots/ready.ts'

/** On the same living plants (grower's page: every 7 to 10 days, never under 5). */
export const leastDaysBetween = 5

/**
 * The card for the sprayer, or every reason why there is none: a lot that is unrested, failed or unmeasured gets none, nor does a field
 * that was treated less than five days ago.
 */
export function sprayerCard(
  lot: CondensateLot,
  mixture: Mixture,
  today: { date: DateText; clockSure: boolean },
  field: string | null,
): Checked<SprayerCard> {
  const wrong = notReady(lot, today)
  const vinegarMl = Math.ceil(mixture.vinegarMl)
  if (vinegarMl > lot.volumeMl) {
    wrong.push(problem('more-than-there-is', 'tank', { lot: lot.id, value: vinegarMl, high: lot.volumeMl, unit: 'mL' }))
  }
  const growing = mixture.touches === 'living-plants'
  const last = lastUse(lot, field)
  if (growing && last !== null && daysBetween(last, today.date) < leastDaysBetween) {
    wrong.push(problem('interval-too-short', 'field', { last, date: addDays(last, leastDaysBetween), low: leastDaysBetween }))
  }
  if (wrong.length > 0) return refuse(...wrong)
  return accept({
    lot: lot.id,
    mixture,
    date: today.date,
    notAgainBefore: growing ? addDays(today.date, leastDaysBetween) : null,
    leftMl: lot.volumeMl - vinegarMl,
    tanksLeft: Math.floor(lot.volumeMl / vinegarMl),
  })
}

function lastUse(lot: CondensateLot, field: string | null): DateText | null {
  if (field === null) return null
  let last: DateText | null = null
  for (const done of lot.uses) if (done.field === field && (last === null || done.date > last)) last = done.date
  return last
}
