import type { EntryProblem } from '../../contract/entry-problems.ts'
import type { CheckResult, CheckValues, CondensateLot, DateText } from '../../contract/lots.ts'
import { problem } from '../entered/number.ts'
import { checkLot } from './check.ts'
import { restOf } from './rest.ts'

/**
 * What must have been measured before a lot may go on plants: all that can be measured beside the drum. Acidity needs a titration and
 * the smoke window a probe at the chimney; where they are open the card says so, it is not refused for them.
 */
const neededClauses: readonly (keyof CheckValues)[] = ['ph', 'density', 'colour', 'clarity']

/** The lot's newest check against its norm, seen today; null before any. */
export function currentCheck(lot: CondensateLot, today: { date: DateText; clockSure: boolean }): CheckResult | null {
  return lot.lastCheck === null ? null : checkLot(lot, lot.lastCheck.norm, lot.lastCheck.values, today, lot.lastCheck.date)
}

/** Why the lot may not be sprayed; empty when it may. */
export function notReady(lot: CondensateLot, today: { date: DateText; clockSure: boolean }): EntryProblem[] {
  const rest = restOf(lot, today)
  if (rest.state === 'refused') return [rest.problem]
  if (rest.state === 'resting') return [problem('lot-unrested', 'lot', { lot: lot.id, date: rest.drawFrom })]
  if (lot.stage === 'crude') return [problem('lot-unrested', 'lot', { lot: lot.id, date: rest.drawFrom, because: 'not-drawn' })]
  const check = currentCheck(lot, today)
  if (check === null) return [problem('lot-unmeasured', 'lot', { lot: lot.id, clauses: neededClauses.join(', ') })]
  const failed = check.clauses.filter((clause) => clause.verdict === 'fail')
  if (failed.length > 0) return [problem('lot-failed', 'lot', { lot: lot.id, clauses: failed.map((clause) => clause.clause).join(', ') })]
  // asked whatever norm was chosen: a norm that leaves colour out must not open the door
  const values: CheckValues = lot.lastCheck?.values ?? {}
  const open = neededClauses.filter((clause) => values[clause] === undefined)
  return open.length > 0 ? [problem('lot-unmeasured', 'lot', { lot: lot.id, clauses: open.join(', ') })] : []
}
