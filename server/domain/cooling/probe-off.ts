import type { Reason } from '../../contract/fold.ts'
import { mean } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import { nowK } from './signs.ts'
import type { Cooling } from './state.ts'

// Recorded and simulated tight drums kept at least 0.85 of the wall's excess over the air in 20 minutes and 0.7 in an hour: trials, no source.
const keptIn20Min = 0.7
const keptInHour = 0.5
/** What a shower, the sun or a gust may move, K. */
const fallsAtLeastK = 5

export function fellOff(cooling: Cooling, over: number | null): Reason[] | null {
  if (over === null) return null
  const last = cooling.points.length - 1
  const falls = (back: number, kept: number, leastK = fallsAtLeastK): boolean => {
    const before = cooling.points[last - back]
    return before !== null && before !== undefined && before - over > leastK && over < kept * before
  }
  return falls(1, keptIn20Min) || falls(2, keptIn20Min) || falls(6, keptInHour, 2 * fallsAtLeastK)
    ? [{ code: 'wall-fell-off', value: over }]
    : null
}

// Under this share of what the wall shows, the wall clear of the weather, a core probe sits in no charcoal: of 480 nights in drums of other hands
// three in a hundred came so low, and cost those the sooner call only.
const coreLeastShare = 0.6
const clearOfWeatherK = 10

/** A core probe as cool as the air beside a warm wall: it hangs outside, and the wall alone is asked from then on. */
export function coreHangsOut({ points, corePoints }: Cooling): boolean {
  const wall = nowK(points)
  const core = nowK(corePoints)
  return wall !== null && core !== null && wall > clearOfWeatherK && core < coreLeastShare * wall
}

/** A wall beside a fire that charred wood is warmer than this over the air; what reads less hangs outside. From trials, no source. */
const wallBesideFireK = 50
const fireC = 350
const warmsInMs = 4 * 3_600_000

/** The probe was off before the seal: it fell while the fire burnt, or it never was warm. Looked at in the first hour. */
export function neverWarm(cooling: Cooling, look: Look, felt: number): Reason[] | null {
  if (cooling.points.length < 2 || cooling.points.length > 7) return null
  const fire = mean(look.past.firebox, 180, 20)
  const first = cooling.firstK
  const burntMs = look.litAt === null ? 0 : cooling.sealedAt - look.litAt
  if (first !== null && first < wallBesideFireK && fire !== null && fire > fireC && burntMs >= warmsInMs)
    return [{ code: 'wall-fell-off', value: first, limit: wallBesideFireK }]
  for (let back = 20; back < 220; back += 10) {
    const before = mean(look.past.wall, 10, back + 20)
    const after = mean(look.past.wall, 10, back)
    if (before === null || after === null) continue
    if (before - felt > wallBesideFireK && after - felt < keptIn20Min * (before - felt))
      return [{ code: 'wall-fell-off', value: after - felt }]
  }
  return null
}
