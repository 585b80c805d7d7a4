import type { Ms } from '../../contract/fold.ts'
import type { Lesson } from '../../contract/learnt.ts'
import { conditionsOf } from './falls.ts'
import type { Night } from './night.ts'

/** A night that lay so many spreads towards a fire, and was called all the same, is none to compare others with. Own judgement. */
const doubtedFromZ = 2.5

/** Charcoal that glows shows within minutes of the first air. Own judgement. */
const quietForMs = 10 * 60_000

/** Stands open so long that what glowed would have risen. */
export const stoodOpen = ({ cooling }: Night, at: Ms): boolean =>
  cooling !== null && cooling.opened !== null && at - cooling.opened.since >= quietForMs

/**
 * How this night fell, once the trial opening is called, or it was opened and stayed quiet, and nothing in it spoke of a fire or of a probe that was off;
 * null until then.
 */
export function nightLesson({ cooling, open }: Night, opened: boolean): Extract<Lesson, { part: 'night' }> | null {
  if (cooling === null || !(opened || open?.due === true) || cooling.firstK === null) return null
  const { told, hasRelit, burnsOpen, wallOff, mostLeakZ, before, firstK, warmthK } = cooling
  if (told || hasRelit !== null || burnsOpen !== null || wallOff !== null || mostLeakZ >= doubtedFromZ) return null
  return { part: 'night', conditions: conditionsOf(before, firstK).map((v) => Math.round(v * 1000) / 1000), warmthK: [...warmthK] }
}
