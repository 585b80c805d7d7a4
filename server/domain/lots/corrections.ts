import type { EntryProblem } from '../../contract/entry-problems.ts'
import type { LotEntry } from '../../contract/lots.ts'
import { problem } from '../entered/number.ts'

/**
 * What the entries say once the later ones have corrected the earlier: in the order of the originals, the newest word on each,
 * and without those that were made void. Every entry is still there to be read.
 */
export function effective(entries: readonly LotEntry[]): LotEntry[] {
  const original = new Map<string, string>()
  const newest = new Map<string, LotEntry>()
  for (const entry of entries) {
    const root = entry.corrects === undefined ? entry.id : (original.get(entry.corrects) ?? entry.corrects)
    original.set(entry.id, root)
    newest.set(root, entry)
  }
  return [...newest.values()].filter((entry) => entry.event.what !== 'void')
}

/** A correction names an entry that is there; an entry that takes another's id would hide it. */
export function rightlyNamed(entries: readonly LotEntry[], entry: LotEntry): EntryProblem[] {
  if (entries.some((earlier) => earlier.id === entry.id)) return [problem('id-taken', 'id', { entry: entry.id })]
  if (entry.corrects === undefined) return entry.event.what === 'void' ? [problem('missing', 'corrects')] : []
  return entries.some((earlier) => earlier.id === entry.corrects) ? [] : [problem('no-such-entry', 'corrects', { entry: entry.corrects })]
}
