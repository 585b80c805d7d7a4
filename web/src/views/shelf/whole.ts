import type { Ms } from '../../../../server/contract/fold.ts'
import type { Curve } from '../../../../server/contract/live.ts'
import type { Person } from '../../../../server/contract/routes.ts'
import { ApiProblem, type Api, type WholeFiring } from '../../lib/api/api.ts'
import type { Weighed } from './result.ts'

/** One revision of a document about a firing: who wrote what, and when. */
export interface Revision<T> {
  revision: number
  at: Ms
  by: Person | 'service'
  document: T
}

export interface Note {
  text: string
  name: string
}

export interface Whole {
  firing: WholeFiring
  curve: Curve
  weighed: Revision<Weighed & { name?: string }>[]
  notes: Revision<Note>[]
  /** The firing of which this one was worked out anew. */
  again: string | null
}

/** @throws ApiProblem */
export async function loadWhole(api: Api, id: string): Promise<Whole> {
  const [firing, curve, weighed, notes, again] = await Promise.all([
    api.firing(id),
    api.curve(id),
    historyOf<Weighed & { name?: string }>(api, 'result', id),
    historyOf<Note>(api, 'note', id),
    id.startsWith('again-') ? historyOf<{ of: string }>(api, 'played-again', id) : [],
  ])
  return { firing, curve, weighed, notes, again: again.at(-1)?.document.of ?? null }
}

/** Every revision, the oldest first; none where nothing was ever written. */
async function historyOf<T>(api: Api, kind: string, id: string): Promise<Revision<T>[]> {
  try {
    const found = await api.ask<Revision<T>[]>('documentHistory', { kind, id })
    return Array.isArray(found) ? found : []
  } catch (problem) {
    if (problem instanceof ApiProblem && problem.code === 'not-found') return []
    throw problem
  }
}
