import type { Mixture, SprayerCard } from '../../contract/dilution.ts'
import type { Checked } from '../../contract/entry-problems.ts'
import type { CondensateLot, DateText, Ledger } from '../../contract/lots.ts'
import { addDays, daysBetween } from '../entered/calendar.ts'
import { accept, problem, refuse } from '../entered/number.ts'
import { notReady } from '../lots/ready.ts'

/** On the same living plants (grower's page: every 7 to 10 days, never under 5). */
export const leastDaysBetween = 5

/**
 * The card for the sprayer, or every reason why there is none: a lot that is unrested, failed or unmeasured gets none, nor does a field
 * that was treated less than five days ago.
 * @param lastOnField when that field was last treated, with whatever lot; null where no field is named or it never was
 */
export function sprayerCard(
  lot: CondensateLot,
  mixture: Mixture,
  today: { date: DateText; clockSure: boolean },
  lastOnField: DateText | null,
): Checked<SprayerCard> {
  const wrong = notReady(lot, today)
  const vinegarMl = Math.ceil(mixture.vinegarMl)
  if (vinegarMl > lot.volumeMl) {
    wrong.push(problem('more-than-there-is', 'tank', { lot: lot.id, value: vinegarMl, high: lot.volumeMl, unit: 'mL' }))
  }
  const growing = mixture.touches === 'living-plants'
  if (growing && lastOnField !== null && daysBetween(lastOnField, today.date) < leastDaysBetween) {
    wrong.push(
      problem('interval-too-short', 'field', { last: lastOnField, date: addDays(lastOnField, leastDaysBetween), low: leastDaysBetween }),
    )
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

/** When a field was last treated, with whatever lot. Names of fields are told apart as they were written, but for spaces and capitals. */
export function lastUseOn(ledger: Ledger, field: string): DateText | null {
  const wanted = plainName(field)
  let last: DateText | null = null
  for (const lot of ledger.lots.values()) {
    if (lot.kind !== 'condensate') continue
    for (const done of lot.uses) {
      if (done.field !== null && plainName(done.field) === wanted && (last === null || done.date > last)) last = done.date
    }
  }
  return last
}

function plainName(field: string): string {
  return field.trim().replace(/\s+/g, ' ').toLowerCase()
}
