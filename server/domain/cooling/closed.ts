import type { Reason } from '../../contract/fold.ts'
import { mean, slope } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'

// Recorded and simulated kilns: after the seal the firebox loses half of itself in an hour and the wall 40 to 70 K; before it, while the fire is
// kept, neither falls for long. Trials, no source.
const fireKept = 0.8
const wallFallsKPerH = -25

/** The probes look as if mouth and chimney were closed half an hour ago; null where they do not. */
export function looksClosed(look: Look): Reason | null {
  const now = mean(look.past.firebox, 5)
  const before = mean(look.past.firebox, 10, 30)
  const wall = slope(look.past.wall, 30)
  if (now === null || before === null || wall === null) return null
  return now < fireKept * before && wall < wallFallsKPerH ? { code: 'looks-closed', value: wall } : null
}
