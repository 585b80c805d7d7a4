import type { Reason } from '../../contract/fold.ts'
import type { Look } from '../firing/look.ts'
import { conditionsOf, edges } from './falls.ts'
import { leakSign } from './leak.ts'
import { leakZ } from './leak-z.ts'
import type { Cooling } from './state.ts'
import { tightNight } from './tight.ts'

/** Fall of the logarithm per hour between two ten-minute points; null where either is missing or near nothing. */
export function ratePerH(cooling: Cooling, from: number, to: number): number | null {
  const a = cooling.points[from]
  const b = cooling.points[to]
  if (a === null || a === undefined || b === null || b === undefined || a <= 2 || b <= 2) return null
  return (Math.log(a / b) * 6) / (to - from)
}

/** From here on it is told that air gets in; `npm run sealed` prints what any other value tells and cries. Once told it stands until the lesser. */
const leakFromZ = 3.3
const leakUntilZ = 2.5
/** With less where the last three hours speak for it too: spreads, and odds that stand for twenty minutes. */
const withOddsFromZ = 1.5
const withZFrom = 1.8
/** Odds of the last three hours from which nobody opens. */
const dawdlesFrom = 2
const lastEdge = edges.at(-1) ?? 0

/** Slower than a tight night of this kiln, as its own early hours and its nights before let expect: looked at where a stretch ends. */
function fallsSlow(cooling: Cooling, look: Look): boolean {
  const { firstK, warmthK, points } = cooling
  const last = points.length - 1
  if (firstK === null || last > lastEdge) return false
  if (edges[warmthK.length - 1] !== last) return cooling.fallsSlow
  const conditions = conditionsOf(cooling.before, firstK)
  const z = (cooling.leakZ = leakZ({ conditions, warmthK }, tightNight(conditions, look.config.prior?.night ?? [])))
  cooling.mostLeakZ = Math.max(cooling.mostLeakZ, z ?? 0)
  return z !== null && z >= (cooling.fallsSlow ? leakUntilZ : leakFromZ)
}

/** Slower than it should fall, by its whole course or by its last hours; `slow` is news, `dawdles` only holds the opening back. */
export function slowing(cooling: Cooling, look: Look, over: number | null): Pick<Cooling, 'fallsSlow' | 'slow' | 'dawdles' | 'lingers'> {
  const before = cooling.leakSign
  const now = (cooling.leakSign = leakSign(cooling.points, cooling.firstK))
  const odds = before === null || now === null ? -Infinity : Math.min(before, now)
  const falls = fallsSlow(cooling, look)
  const last = cooling.points.length - 1
  const reasons: Reason[] = [{ code: 'cools-slower', value: ratePerH(cooling, last - 6, last) ?? 0 }]
  const told = falls || (odds >= withZFrom && (cooling.leakZ ?? 0) >= withOddsFromZ)
  const lingers = lingering(cooling)
  // a steady small fire has no last hours that promised more: it is told once it holds the wall clear of any weather
  const heldClear = over !== null && over >= clearOfWeatherK ? lingers : null
  return { fallsSlow: falls, slow: told ? reasons : heldClear, dawdles: odds >= dawdlesFrom ? reasons : null, lingers }
}

// Of 1,370 simulated tight nights one in a hundred fell slower than 0.43 of its third to ninth hour, of those that still burnt all whose fire the
// wall felt.
const lingersUnder = 0.45
/** Nearer to the air a change of the weather looks the same, K: own judgement. */
const clearOfWeatherK = 25
const lingersPoints = 48

function lingering(cooling: Cooling): Reason[] | null {
  const last = cooling.points.length - 1
  if (last < 18 + 36 + lingersPoints / 2) return null
  const first = ratePerH(cooling, 18, 54)
  const now = ratePerH(cooling, last - lingersPoints, last)
  return first !== null && now !== null && now < lingersUnder * first
    ? [{ code: 'cools-slower', value: now, limit: lingersUnder * first }]
    : null
}
