import type { Ms, Reason } from '../../contract/fold.ts'
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

/** By then the firebox of a closed kiln has lost a third; until then minutes are kept that show it before the seal. */
const judgedFromMin = 40
const judgedToMin = 210

/** Logged as sealed, and the firebox goes on as if it were fed: sealed by a slip of the finger, or not at all. Null where it does not. */
export function burnsOn(look: Look, sealedAt: Ms): Reason | null {
  const minutes = (look.at - sealedAt) / 60_000
  if (minutes < judgedFromMin || minutes > judgedToMin) return null
  const now = mean(look.past.firebox, 10)
  const before = mean(look.past.firebox, 20, Math.ceil(minutes))
  if (now === null || before === null) return null
  const limit = Math.max(look.config.limits.fireLowC, fireKept * before)
  return now >= limit ? { code: 'burns-on', value: now, limit } : null
}
