import type { CondensateLot, Lot } from '../../../../server/contract/lots.ts'
import { currentCheck, notReady, restOf } from '../../lib/domain.ts'

export interface Today {
  date: string
  clockSure: boolean
}

/** What stands largest on a lot's page. */
export type LotAnswer =
  { say: 'leave'; date: string } | { say: 'draw' | 'dregs' | 'checkFirst' | 'usable' | 'failed' | 'usedUp' | 'unsure' }

export function answerOf(lot: CondensateLot, today: Today): LotAnswer {
  if (lot.volumeMl === 0) return { say: 'usedUp' }
  // the middle was drawn off: what stays is for the tins (a twentieth of what came in; common practice, no source)
  if (lot.stage === 'crude' && lot.layers !== null && lot.layers.vinegarMl * 20 < lot.cameInMl) return { say: 'dregs' }
  const rest = restOf(lot, today)
  if (rest.state === 'refused') return { say: 'unsure' }
  if (rest.state === 'resting') return { say: 'leave', date: rest.drawFrom }
  if (lot.stage === 'crude') return { say: 'draw' }
  if (currentCheck(lot, today)?.clauses.some((clause) => clause.verdict === 'fail')) return { say: 'failed' }
  return notReady(lot, today).length === 0 ? { say: 'usable' } : { say: 'checkFirst' }
}

/** What stands largest over all lots: what can be done now before what is to come. */
export type ShelfAnswer =
  | { say: 'empty' | 'unsure' | 'allQuiet' }
  | { say: 'ready' | 'checkFirst' | 'usable'; lot: string }
  | { say: 'resting'; lot: string; date: string }

export function answerOfAll(lots: readonly Lot[], today: Today): ShelfAnswer {
  const liquids = lots.filter((lot): lot is CondensateLot => lot.kind === 'condensate' && lot.volumeMl > 0)
  if (lots.length === 0) return { say: 'empty' }
  let next: { say: 'resting'; lot: string; date: string } | null = null
  let usable: string | null = null
  for (const lot of liquids) {
    const answer = answerOf(lot, today)
    if (answer.say === 'unsure') return { say: 'unsure' }
    if (answer.say === 'draw') return { say: 'ready', lot: lot.id }
    if (answer.say === 'checkFirst') return { say: 'checkFirst', lot: lot.id }
    if (answer.say === 'usable') usable ??= lot.id
    if (answer.say === 'leave' && (next === null || answer.date < next.date)) next = { say: 'resting', lot: lot.id, date: answer.date }
  }
  return next ?? (usable === null ? { say: 'allQuiet' } : { say: 'usable', lot: usable })
}
