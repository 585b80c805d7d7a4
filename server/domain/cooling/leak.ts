import { leakBase, leakWeights } from './tables/leak-sign.ts'

// Air that gets in burns charcoal, and the wall falls slower than its own last hours and its warmth promise. One probe at one place sees a fire
// elsewhere in the drum late or never: `npm run sealed` prints how many are told, against how many nights cry for nothing.

const perHour = 6
/** Nearer to the air the weather moves the wall as much, K. */
const leastK = 20
const leastRatePerH = 0.005

/** Fall of the logarithm per hour; null where a point is missing. */
function rate(points: readonly (number | null)[], from: number, to: number): number | null {
  const a = points[from] ?? null
  const b = points[to] ?? null
  if (a === null || b === null || to <= from) return null
  return Math.max(leastRatePerH, (Math.log(a / Math.max(2, b)) * perHour) / (to - from))
}

/** What the night tells now: its age, how fast the wall fell in the last half hour and in the last three hours, how warm it is and was. */
export function leakFeatures(points: readonly (number | null)[], firstK: number | null): number[] | null {
  const last = points.length - 1
  const now = points[last] ?? null
  if (last < 9 || now === null || firstK === null || now < leastK) return null
  const rates = [
    rate(points, Math.max(1, last - 6), last),
    rate(points, Math.max(1, last - 12), Math.max(6, last - 6)),
    rate(points, Math.max(1, last - 18), Math.max(6, last - 12)),
    rate(points, Math.max(1, last - 3), last),
  ]
  if (rates.some((r) => r === null)) return null
  return [Math.log(last / perHour), ...rates.map((r) => Math.log(r ?? 1)), Math.log(now), Math.log(Math.max(leastK, firstK))]
}

/** Logarithm of the odds that air is getting in, among nights of the study; null where nothing can be said. */
export function leakSign(points: readonly (number | null)[], firstK: number | null): number | null {
  const features = leakFeatures(points, firstK)
  return features === null ? null : features.reduce((sum, x, i) => sum + x * (leakWeights[i] ?? 0), leakBase)
}
