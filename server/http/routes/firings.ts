import { z } from 'zod'
import type { Act } from '../../contract/actions.ts'
import type { Ms, Output } from '../../contract/fold.ts'
import { wholeCurvePoints } from '../../contract/live.ts'
import { exportFiring } from '../../recordings/export.ts'
import { keptFile } from '../../recordings/in/kept-file.ts'
import { pictureRows } from '../../recordings/glasses.ts'
import { actsOfFiring } from '../../runtime/acts.ts'
import { bucketWidthMs, grainOf, thin } from '../../storage/thin.ts'
import { summaryOf, type CurvePoint, type FiringRecord } from '../../storage/store.ts'
import type { Answer, Question } from '../context.ts'
import { numberOf, understood } from '../context.ts'
import { curveOf } from '../curve.ts'
import type { Instance } from '../instance.ts'
import { Problem } from '../problem.ts'

const standardPoints = 1000
const pointBounds = { low: 10, high: 5000, standard: standardPoints }

/** What a person was told. Estimates and forecasts of a day are many, and no page looks back at them. */
export const told = ['phase', 'call', 'alarm', 'hint'] as const satisfies Output['kind'][]

export async function recordOf({ instance, params }: Question): Promise<FiringRecord> {
  const record = await instance.store.firing(params.id ?? '')
  if (!record) throw new Problem('not-found')
  return record
}

/** A firing that is over: what is still going on cannot be played from its beginning to its end. */
export async function closedRecordOf(question: Question): Promise<FiringRecord & { endedAt: Ms }> {
  const record = await recordOf(question)
  const { endedAt } = record
  if (endedAt === null) throw new Problem('bad-request', [{ path: 'id', what: 'the firing is still going on' }])
  return { ...record, endedAt }
}

/** `most`: only so many, the newest. */
export async function listFirings({ instance, query }: Question): Promise<Answer> {
  const most = numberOf(query, 'most', { low: 1, high: 1e9, standard: 1e9 })
  const headers = { 'content-type': 'application/json', 'cache-control': 'no-store' }
  return new Response(await instance.store.shelf(most), { headers })
}

export async function oneFiring(question: Question): Promise<Answer> {
  const record = await recordOf(question)
  const [outputs, acts] = await Promise.all([question.instance.store.outputs(record.id, told), actsOf(question.instance, record)])
  return { json: { ...summaryOf(record), config: JSON.parse(record.config) as unknown, outputs, acts } }
}

export async function renameFiring(question: Question): Promise<Answer> {
  const record = await recordOf(question)
  const { title } = understood(z.object({ title: z.string().max(200) }), question.body)
  await question.instance.store.putFiring({ ...record, title })
  return { json: { ...summaryOf(record), title } }
}

export async function firingCurve(question: Question): Promise<Answer> {
  const { instance, query } = question
  const record = await recordOf(question)
  const end = record.endedAt
  const from = numberOf(query, 'from', { low: 0, high: 8.64e15, standard: record.originAt })
  const to = numberOf(query, 'to', { low: from + 1, high: 8.64e15, standard: Math.max(from + 1, end ?? instance.now()) })
  const points = numberOf(query, query.has('buckets') ? 'buckets' : 'points', pointBounds)
  const isWhole = end !== null && from === record.originAt && to === end && points === wholeCurvePoints
  const [lines, outputs, acts] = await Promise.all([
    isWhole ? instance.store.wholeCurve(record.id, from, to) : instance.store.curve(record.id, from, to, points),
    instance.store.outputs(record.id, told),
    actsOf(instance, record),
  ])
  return { json: curveOf({ from, to, end }, lines, outputs, acts) }
}

/** The curve of what runs at a kiln now, firing or not. */
export async function currentCurve(question: Question): Promise<Answer> {
  const { instance, query } = question
  const kiln = query.get('kiln') ?? instance.kilns()[0] ?? ''
  const session = instance.session(kiln)
  if (!session) throw new Problem('unknown-kiln')
  if (session.openedAt !== null && (await instance.store.firing(session.id))) {
    return firingCurve({ ...question, params: { id: session.id } })
  }
  const points = instance.idleCurve(session.id)
  const to = instance.now()
  const from = points.reduce((least, point) => Math.min(least, point.t), to - 1)
  const roles = [...new Set(points.map((point) => point.role))]
  const lines = roles.map((role) => ({ role, ...thinned(points, role, from, to) }))
  return { json: curveOf({ from, to, end: null }, lines, [], instance.kilnView(kiln)?.firing.acts ?? []) }
}

export async function recording(question: Question): Promise<Answer> {
  const record = await recordOf(question)
  return download(recordingPages(question.instance, record), `${record.id}.jsonl`, 'application/x-ndjson; charset=utf-8')
}

/** The lines of a firing from the journal, or the file that it was taken in from as it came. */
async function* rawPages(instance: Instance, record: FiringRecord): AsyncGenerator<string> {
  const kept = await keptFile(instance.store, record.id)
  if (kept === null) yield* exportFiring(instance.store, record, foreignNodes(instance, record.kiln))
  else yield kept
}

/** The same at once, to be played again. */
export async function rawText(instance: Instance, record: FiringRecord): Promise<string> {
  let text = ''
  for await (const page of rawPages(instance, record)) text += page
  return text
}

/** The lines of a firing, then its photographed glasses. */
export async function* recordingPages(instance: Instance, record: FiringRecord): AsyncGenerator<string> {
  yield* rawPages(instance, record)
  yield* pictureRows(instance.store, record.kiln, await actsOf(instance, record))
}

/** A file that is written while it is read. */
export function download(pages: AsyncGenerator<string | Uint8Array>, name: string, type: string): Response {
  const encoder = new TextEncoder()
  const body = new ReadableStream<Uint8Array>({
    async pull(controller) {
      const { value, done } = await pages.next()
      if (done) controller.close()
      else controller.enqueue(typeof value === 'string' ? encoder.encode(value) : value)
    },
    async cancel() {
      await pages.return(undefined)
    },
  })
  const headers = {
    'content-type': type,
    'content-disposition': `attachment; filename="${name}"`,
  }
  return new Response(body, { headers })
}

/** Nodes whose channels all stand at other kilns. */
function foreignNodes(instance: Instance, kiln: string): Set<string> {
  const nodesAt = (one: string) =>
    Object.keys(instance.session(one)?.config.roles ?? {}).map((channel) => channel.slice(0, channel.lastIndexOf('/')))
  const foreign = new Set(instance.kilns().flatMap((one) => (one === kiln ? [] : nodesAt(one))))
  for (const node of nodesAt(kiln)) foreign.delete(node)
  return foreign
}

export async function actsOf({ store, kilnView }: Instance, record: FiringRecord): Promise<Act[]> {
  return record.endSeq === null ? (kilnView(record.kiln)?.firing.acts ?? []) : actsOfFiring(store, record)
}

function thinned(points: readonly CurvePoint[], role: CurvePoint['role'], from: number, to: number) {
  const grains = points.filter((point) => point.role === role).sort((a, b) => a.t - b.t)
  return thin(
    grains.map(({ t, value }) => grainOf(t, value)),
    from,
    bucketWidthMs(from, to, standardPoints),
  )
}
