import type { Act } from '../contract/actions.ts'
import type { Ms } from '../contract/fold.ts'
import type { FiringRecord, Store } from '../storage/store.ts'
import { documentOf } from './entry.ts'

const kind = 'firing-acts'

/** Read once from the journal when a firing closes, so that opening it later need not read days of readings. */
export async function keepActs(store: Store, firing: FiringRecord): Promise<Act[]> {
  const acts = await fromJournal(store, firing)
  await putActs(store, firing.id, firing.endedAt ?? firing.startedAt, acts)
  return acts
}

/** @param at when the firing ended */
export async function putActs(store: Store, firing: string, at: Ms, acts: readonly Act[]): Promise<void> {
  await store.putDocument({ kind, id: firing, at, by: 'service', json: JSON.stringify(acts) })
}

/** What was done and seen in a closed firing, in the order in which it was entered. */
export async function actsOfFiring(store: Store, firing: FiringRecord): Promise<Act[]> {
  const kept = (await store.history(kind, firing.id)).at(-1)
  return kept ? (JSON.parse(kept.json) as Act[]) : fromJournal(store, firing)
}

async function fromJournal(store: Store, { kiln, originSeq, endSeq }: FiringRecord): Promise<Act[]> {
  const acts: Act[] = []
  for await (const entries of store.read(originSeq, endSeq ?? undefined)) {
    for (const entry of entries) if (entry.kind === 'act' && entry.kiln === kiln) acts.push(documentOf<Act>(entry))
  }
  return acts
}
