import type { Reason } from '../../contract/fold.ts'
import { mean, slope } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import { smokeBands } from '../phases/limits.ts'

/** Left its plateau: it climbs at the rate of a clay kiln at least (trade facts 9.3: 6 K/h), or stands above any plateau. */
const climbingKPerH = 4
/** A kiln's own plateau is the dew point of its smoke: 64 to 92 by how much gas dilutes the vapour (trade facts 8.15). */
const ownPlateauC = 62
const aboveOwnPlateauK = 5
const standingKPerH = 12
/** A late stop costs six times an early one, so the stop looks this far ahead, min (smoke of the next bottle, common practice). */
export const stopLeadMin = 30

/** The smoke says that collecting is worth it: the published band, or clear of this kiln's own plateau. */
export function smokeStart(look: Look): Reason[] | null {
  const smoke = mean(look.past.smoke, 10)
  if (smoke === null) return null
  const limit = look.config.limits.smokeStartC
  // arriving at a plateau is not leaving it: the last quarter of an hour must climb as the last hour does
  const hour = slope(look.past.smoke, 60) ?? slope(look.past.smoke, 30)
  const quarter = slope(look.past.smoke, 15)
  const rate = hour === null || quarter === null ? hour : Math.min(hour, quarter)
  if (smoke >= limit && (smoke >= smokeBands.plateauTop + 1 || (rate !== null && rate >= climbingKPerH)))
    return [
      { code: 'smoke-over', value: smoke, limit },
      ...(rate === null ? [] : [{ code: 'smoke-climbs', value: rate, limit: climbingKPerH }]),
    ]
  // what it stood at before the last twenty minutes
  const stood = mean(look.past.smoke, 40, 20)
  const stoodRate = slope(look.past.smoke, 40, 20)
  if (stood === null || stoodRate === null || Math.abs(stoodRate) > standingKPerH) return null
  if (smoke >= ownPlateauC && smoke >= stood + aboveOwnPlateauK)
    return [{ code: 'smoke-left-plateau', value: smoke, limit: stood + aboveOwnPlateauK }]
  return null
}

/** The smoke is at its stop, or at the rate of the last half hour will be before the next bottle is full. */
export function smokeStop(look: Look): Reason[] | null {
  const smoke = mean(look.past.smoke, 10)
  if (smoke === null) return null
  const limit = look.config.limits.smokeStopC
  if (smoke >= limit) return [{ code: 'smoke-over', value: smoke, limit }]
  const rate = slope(look.past.smoke, 30)
  if (rate === null || smoke < limit - 40) return null
  const ahead = smoke + (rate * stopLeadMin) / 60
  return ahead >= limit
    ? [
        { code: 'smoke-will-reach', value: ahead, limit },
        { code: 'smoke-now', value: smoke },
      ]
    : null
}
