import type { Act, ActionName } from '../../../../server/contract/actions.ts'
import type { ActId } from '../../../../server/contract/fold.ts'
import type { FiringView } from '../../../../server/contract/live.ts'

export interface LogLine {
  /** As it now stands: the entry, or the newest that corrects it. */
  act: Act
  /** The first entry of the chain; corrections name it. */
  first: Act
  corrected: boolean
  takenBack: boolean
}

/** A correction by an empty note says that it was not so. */
export const takenBackAct = { action: 'note', text: '' } as const

/** The log as it now stands, newest first. Nothing is erased: corrected lines keep their mark. */
export function logOf(acts: readonly Act[]): LogLine[] {
  const lines = new Map<ActId, LogLine>()
  const firstOf = new Map<ActId, ActId>()
  for (const act of acts) {
    const first = act.corrects === undefined ? undefined : (firstOf.get(act.corrects) ?? act.corrects)
    const line = first === undefined ? undefined : lines.get(first)
    if (first !== undefined && line) {
      firstOf.set(act.id, first)
      line.act = act
      line.corrected = true
      line.takenBack = act.act.action === 'note' && act.act.text === ''
    } else lines.set(act.id, { act, first: act, corrected: false, takenBack: false })
  }
  return [...lines.values()].sort((a, b) => b.act.doneAt - a.act.doneAt)
}

/** The newest entry of this name that still stands. */
export function lastOf(firing: FiringView, name: ActionName): Act | undefined {
  return logOf(firing.acts).find((line) => !line.takenBack && line.act.act.action === name)?.act
}

/** What was last seen of smoke or drip. */
export function lastSeen(firing: FiringView, what: 'smoke' | 'drip'): Act | undefined {
  return logOf(firing.acts).find(({ act: { act }, takenBack }) => {
    if (takenBack) return false
    if (act.action === 'observe') return act[what] !== undefined
    return what === 'drip' && act.action === 'glass' && act.drip !== undefined
  })?.act
}
