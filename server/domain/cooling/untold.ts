import type { Reason } from '../../contract/fold.ts'
import type { Look } from '../firing/look.ts'
import type { Cooling } from './state.ts'

/** So near to what its cover felt the wall tells nothing of the inside, K (as in the bound). */
const nearK = 2.5
const nearPoints = 36
const hourMs = 3_600_000

/** A fire that came back and is out keeps it shut until it is closed anew, which begins another night (`judgeOpen`). */
const cameBack: Reason[] = [{ code: 'fire-came-back' }]

/**
 * The wall has been as cool as the air for six hours, the least wait is over, nothing speaks of a fire, and still the call does not come: more
 * hours of these probes will hardly bring it. Sealed or closed anew once the wall was cold, a night has no fall that could be judged. Null otherwise.
 */
export function untold(cooling: Cooling, look: Look): Reason[] | null {
  const { rose, slow, hasRelit, wallOff, points } = cooling
  if (rose === null && hasRelit !== null) return cameBack
  const last = points.slice(-nearPoints)
  if (look.at - cooling.sealedAt < look.config.limits.openMinimumWaitH * hourMs || last.length < nearPoints) return null
  if (rose !== null || slow !== null || wallOff !== null) return null
  if (last.some((over) => over === null || over > nearK)) return null
  // a day more is own judgement; time alone is no proof: a kiln opened on the sixth day went red within moments (trade facts 7.3.8)
  return [{ code: 'wall-tells-no-more', value: 6 }, { code: 'own-signs-only' }]
}
