import type { Ms, Reason } from '../../contract/fold.ts'
import { mean, slope } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import { airC, sunMostK } from './fit.ts'
import type { Cooling } from './state.ts'

/** A kiln with its gap open, or opened: the lowest of each probe by itself, °C, and over the air of the moment, K. */
export interface Opened {
  since: Ms
  lows: Partial<Record<'wall' | 'firebox', { c: number; besideK: number }>>
}

const minuteMs = 60_000
// With air at it charcoal that glows is a fire within minutes: the first few kelvins count, not the tens that a closed kiln is given. Noise and
// warm gas that comes out of the mouth stay under them. Own judgement.
const watched = [
  { role: 'wall', code: 'wall-rose', limitK: 5 },
  { role: 'firebox', code: 'firebox-rose', limitK: 8 },
] as const
const climbsKPerH = 15

/**
 * Sun warms 1.2 mm of steel by hundreds of kelvins an hour at first (4.6 kJ/(m² K)), and within forty minutes as far as it does: what climbs
 * steadily, or longer, has a fire behind it, and so has a mouth that warms beside the wall, K. Own balance, no source.
 */
const sunAtFirstKPerH = 60
const sunSettlesMin = 40
const mouthWarmsK = 4

/** Once it stays open the earth is taken off, and the morning sun warms the wall by tens of kelvins, but not the mouth. */
function mayBeSun(look: Look, opened: Opened, besideK: number, limitK: number): boolean {
  const { wall, firebox } = opened.lows
  if (look.facts.openedAt === null || wall === undefined || besideK >= sunMostK) return false
  const mouthK = (mean(look.past.firebox, 3) ?? -Infinity) - (firebox?.c ?? Infinity)
  if (mouthK > mouthWarmsK && (slope(look.past.firebox, 10) ?? 0) > climbsKPerH) return false
  const leapt = [0, 5, 10, 15, 20, 25, 30, 35].some((back) => (slope(look.past.wall, 5, back) ?? 0) > sunAtFirstKPerH)
  return leapt && (mean(look.past.wall, 3, sunSettlesMin) ?? -Infinity) - wall.c <= limitK
}

const openSince = ({ crackedAt, openedAt }: Look['facts']): Ms | null => crackedAt ?? openedAt

/** Every minute: what rises while air can get in burns. */
export function stepOpened(cooling: Cooling, look: Look): void {
  const since = openSince(look.facts)
  const air = airC(look)
  if (since === null || since < cooling.sealedAt) {
    cooling.opened = null
    cooling.burnsOpen = null
    return
  }
  if (air === null) return
  const first = cooling.opened?.since !== since
  const opened = !first && cooling.opened !== null ? cooling.opened : (cooling.opened = { since, lows: {} })
  const rises: Reason[] = []
  for (const { role, code, limitK } of watched) {
    const now = mean(look.past[role], 3)
    if (now === null) continue
    // logged a while after it was done: what counts is how it stood then
    const from = opened.lows[role] === undefined ? mean(look.past[role], 10, Math.max(0, Math.floor((look.at - since) / minuteMs))) : null
    const known = opened.lows[role] ?? { c: from ?? now, besideK: (from ?? now) - air.value }
    const low = { c: Math.min(known.c, now), besideK: Math.min(known.besideK, now - air.value) }
    opened.lows[role] = low
    // over what it was, clear of how the air rose, and warmer than the air itself: cold iron in a warm morning only follows it
    const rise = Math.min(now - low.c, now - air.value - low.besideK, now - air.value)
    const climbs = (slope(look.past[role], 10) ?? 0) > climbsKPerH && !(role === 'wall' && mayBeSun(look, opened, now - air.value, limitK))
    if (rise > limitK && (cooling.burnsOpen !== null || climbs)) rises.push({ code, value: rise, limit: limitK })
  }
  cooling.burnsOpen = rises.length > 0 ? rises : null
  cooling.hasRelit ??= cooling.burnsOpen
}
