import type { CondensateLot } from '../../contract/lots.ts'

/** A tenth of the middle layer is what a stop in time leaves as tar (sumi-umabe); Brazilian reports of late stops give 20 to 30 % of all. */
const tarInTime = 0.1
const tarLate = 0.2

export interface StopLesson {
  /** Tar over all that was measured, %. */
  tarPct: number
  stop: 'in-time' | 'rather-late' | 'late'
}

/** What the layers say of the stop call of that firing; null before they were measured. */
export function stopLesson(lot: Pick<CondensateLot, 'measured'>): StopLesson | null {
  if (lot.measured === null) return null
  const { lightOilMl, vinegarMl, tarMl } = lot.measured
  const all = lightOilMl + vinegarMl + tarMl
  if (all === 0) return null
  const tarPct = (100 * tarMl) / all
  if (vinegarMl > 0 && tarMl / vinegarMl <= tarInTime) return { tarPct, stop: 'in-time' }
  return { tarPct, stop: tarPct > 100 * tarLate ? 'late' : 'rather-late' }
}
