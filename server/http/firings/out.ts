import { z } from 'zod'
import type { KilnConfig } from '../../contract/fold.ts'
import { documentOfFiring, publishedSchema } from '../../recordings/out/document.ts'
import { mannerOf, tableOf, tablePresets } from '../../recordings/out/table.ts'
import { spansOf } from '../../runtime/shelf.ts'
import type { Answer, Question } from '../context.ts'
import { numberOf, understood } from '../context.ts'
import { actsOf, download, recordOf, told } from '../routes/firings.ts'

const documentPoints = 5000
/** Half a day and more: the widest offset of a place from UTC. */
const offsets = { low: -840, high: 840, standard: 0 }

/** All readings as CSV. `preset`: `plain` or `local`; `offset`: minutes east of UTC, for the times of `local`. */
export async function firingTable(question: Question): Promise<Answer> {
  const { instance, query } = question
  const preset = understood(z.enum(tablePresets), query.get('preset') ?? 'plain')
  const manner = mannerOf(preset, numberOf(query, 'offset', offsets))
  const record = await recordOf(question)
  const [outputs, acts] = await Promise.all([instance.store.outputs(record.id, told), actsOf(instance, record)])
  const to = record.endedAt ?? instance.now()
  const firing = { id: record.id, from: record.originAt, to, phases: spansOf(outputs, record.endedAt), acts, outputs }
  return download(tableOf(instance.store, firing, manner), `${record.id}.csv`, 'text/csv; charset=utf-8; header=present')
}

/** One firing as a document of the published schema. */
export async function firingDocument(question: Question): Promise<Answer> {
  const { store, now } = question.instance
  const record = await recordOf(question)
  const to = Math.max(record.originAt + 1, record.endedAt ?? now())
  const [outputs, acts, notes, lines] = await Promise.all([
    store.outputs(record.id, told),
    actsOf(question.instance, record),
    store.history('note', record.id),
    store.curve(record.id, record.originAt, to, documentPoints),
  ])
  const { charge } = JSON.parse(record.config) as KilnConfig
  const firing = { ...record, phases: spansOf(outputs, record.endedAt) }
  const loaded = acts.findLast(({ act }) => act.action === 'load')?.act
  const { massKg, moisturePct, pieceMm } = loaded?.action === 'load' ? { ...charge, ...loaded } : charge
  const json = documentOfFiring({ firing, charge: known({ massKg, moisturePct, pieceMm }), outputs, acts, notes, lines })
  return {
    json,
    headers: { 'content-disposition': `attachment; filename="${record.id}.json"`, link: '</api/schemas/firing>; rel="describedby"' },
  }
}

export function firingSchema(): Answer {
  return { json: publishedSchema(), headers: { 'content-type': 'application/schema+json' } }
}

function known(charge: { massKg: number | undefined; moisturePct: number | undefined; pieceMm: number | undefined }): KilnConfig['charge'] {
  return Object.fromEntries(Object.entries(charge).filter(([, value]) => value !== undefined))
}
