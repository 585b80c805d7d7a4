import { archiveOf } from '../../recordings/out/archive.ts'
import type { Member } from '../../recordings/out/archive.ts'
import type { Answer, Question } from '../context.ts'
import { numberOf } from '../context.ts'
import type { Instance } from '../instance.ts'
import { download, recordingPages } from '../routes/firings.ts'

/** Every recording of the firings that began from `from` to before `to`, in one file; written while it is read, one firing at a time. */
export async function season({ instance, query }: Question): Promise<Answer> {
  const from = numberOf(query, 'from', { low: 0, high: 8.64e15, standard: 0 })
  const to = numberOf(query, 'to', { low: from, high: 8.64e15, standard: instance.now() })
  const ids = (await instance.store.firings()).filter(({ startedAt }) => startedAt >= from && startedAt < to).map(({ id }) => id)
  return download(
    archiveOf(members(instance, ids.reverse())),
    `firings-${new Date(from).toISOString().slice(0, 10)}.tar`,
    'application/x-tar',
  )
}

async function* members(instance: Instance, ids: readonly string[]): AsyncGenerator<Member> {
  for (const id of ids) {
    const record = await instance.store.firing(id)
    if (record) yield { name: `${id}.jsonl`, at: record.startedAt, pages: recordingPages(instance, record) }
  }
}
