import { mean } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import type { ColdStart, Cooling } from './state.ts'

// The hottest part over the wall, as a share: the highest that 2,000 simulated nights of three kilns of other hands had, all but three in a
// thousand, by how warm the wall was at sealing (a cold place of the drum sees less of the heat). `npm run sealed` holds it to account.
const shareAt200K = Math.exp(0.6)
const shareFalls = 0.54
/** A wall that lost more than half of itself in four hours runs ahead of the charcoal. */
const aheadFrom = 0.75
const aheadGrows = 2.1
const aheadMost = 0.42
/** A wall that rose by more than a seventh in its last hour is ahead of parts that are still raw, wet and slow to cool. */
const risingUnder = 0.85
/** Refining ends near 700 °C, charring near 500 (trade facts 1.1.14). */
const refinedGrows = 1.45
/** What burnt elsewhere is hotter than the share knows. Own judgement. */
const burntGrows = 1.3
/** Offset of a wall probe against that of the air, and drift, K: with the cold start known, and without. */
const wallErrorK = 3
const wallErrorUnknownK = 5
/** So near to the air the wall tells nothing more, K. */
const wallLeastK = 2.5

/** Upper bound of the hottest part, °C. */
export function hottest(cooling: Cooling, look: Look, over: number, felt: number, cold: ColdStart): number {
  const first = Math.max(40, cooling.firstK ?? 100)
  const later = cooling.points[24] ?? cooling.points[25] ?? cooling.points[26] ?? null
  const ahead = later === null ? 0 : Math.min(aheadMost, Math.max(0, Math.log(first / Math.max(1, later)) - aheadFrom))
  const share =
    shareAt200K *
    Math.exp(shareFalls * Math.log(200 / first)) *
    Math.exp(aheadGrows * ahead + Math.max(0, risingUnder - (cooling.hourBefore ?? 1))) *
    (look.facts.refinedAt === null ? 1 : refinedGrows) *
    (cooling.burnt ? burntGrows : 1)
  const wall = Math.max(wallLeastK, over) + (cold.wallOverAirK === null ? wallErrorUnknownK : wallErrorK)
  const core = mean(look.past.core, 10)
  return Math.max(felt + wall * Math.max(1, share), core ?? -273)
}
