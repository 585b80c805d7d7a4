import type { SettingsChange } from '../../contract/setup.ts'
import { changesOf } from '../../settings/changes.ts'
import type { Change } from '../../settings/changes.ts'
import type { Question } from '../context.ts'
import type { Instance } from '../instance.ts'
import { Problem } from '../problem.ts'
import type { Box } from '../routes/box.ts'

const kind = 'settings-change'

/** New settings, and an entry that says what changed, when and by whom. @throws Problem with every wrong field at once */
export async function putAndNote(box: Box, { instance, who }: Question, wanted: unknown): Promise<{ restart: string[] }> {
  const before = box.settings().values
  const { problems, restart } = await box.putSettings(wanted)
  if (problems.length > 0) throw new Problem('bad-settings', problems)
  const changes = changesOf(before, box.settings().values)
  if (changes.length > 0) {
    const at = instance.now()
    // one document for each change of a moment: a second one in the same millisecond is a later revision of it, and both are kept
    await instance.store.putDocument({ kind, id: String(at), at, by: who, json: JSON.stringify(changes) })
  }
  return { restart }
}

/** Newest first. */
export async function allChanges({ store }: Instance): Promise<SettingsChange[]> {
  const documents = await store.documents(kind)
  const whole = await Promise.all(documents.map((one) => (one.revision > 1 ? store.history(kind, one.id) : [one])))
  const newestFirst = whole.flat().sort((a, b) => b.at - a.at || b.revision - a.revision)
  return newestFirst.flatMap(({ at, by, json }) => (JSON.parse(json) as Change[]).map((change) => ({ ...change, at, by })))
}
