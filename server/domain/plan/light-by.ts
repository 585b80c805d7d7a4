import type { Checked } from '../../contract/entry-problems.ts'
import type { DateText } from '../../contract/lots.ts'
import type { LightBy, Range } from '../../contract/plan.ts'
import { accept, outside, refuse } from '../entered/number.ts'
import { evening } from './sun.ts'

/**
 * Hours from lighting until the smoke is clear and the kiln is sealed, bamboo drum kiln, eight runs: 5 h 48 to 8 h 22, then 6 to 17 minutes;
 * another drum maker says about 8 h (2012 and 2016 diaries of two Japanese drum burners).
 */
export const publishedHoursToSeal: Range = { low: 6, likely: 7.3, high: 8.6 }
/** Sealing takes hands and light; half an hour in hand (common practice, no source). */
const spareMin = 30
/** From here a kiln's own record counts for more than what others wrote. */
const ownFirings = 3

/** This kiln's own record as a range that holds four times out of five: the slowest of few, a quantile of many. */
export function hoursToSeal(recordH: readonly number[]): { range: Range; from: LightBy['from'] } {
  const hours = recordH.filter((h) => h > 0 && h < 400).sort((a, b) => a - b)
  if (hours.length < ownFirings) return { range: publishedHoursToSeal, from: 'published' }
  return { range: { low: quantile(hours, 0.1), likely: quantile(hours, 0.5), high: quantile(hours, 0.9) }, from: 'own-record' }
}

function quantile(sorted: readonly number[], share: number): number {
  // few firings: the edge itself, so that ten are needed before the slowest is left out
  const place = share * (sorted.length + 1) - 1
  const below = Math.max(0, Math.min(sorted.length - 1, Math.floor(place)))
  const above = Math.max(0, Math.min(sorted.length - 1, below + 1))
  const low = sorted[place < 0 ? 0 : below] ?? Number.NaN
  const high = sorted[place < 0 ? 0 : above] ?? Number.NaN
  return low + (high - low) * Math.max(0, Math.min(1, place - below))
}

/** The latest time to light so that a slow firing is sealed half an hour before sunset. May come before midnight of the day: a long firing. */
export function lightBy(
  date: DateText,
  latitude: number,
  longitude: number,
  offsetMin: number,
  recordH: readonly number[],
): Checked<LightBy> {
  const sun = evening(date, latitude, longitude, offsetMin)
  const wrong = recordH.flatMap((h) => outside('hoursToSeal', h, 0, 400, 'h'))
  if (!sun.ok) return sun
  if (wrong.length > 0) return refuse(...wrong)
  const { range, from } = hoursToSeal(recordH)
  const sealByMin = Math.floor(sun.value.sunsetMin - spareMin)
  return accept({
    date,
    sunsetMin: sun.value.sunsetMin,
    darkMin: sun.value.darkMin,
    sealByMin,
    // rounded down to five minutes: earlier is never wrong
    lightByMin: Math.floor((sealByMin - 60 * range.high) / 5) * 5,
    hoursToSeal: range,
    from,
    firings: recordH.length,
  })
}
