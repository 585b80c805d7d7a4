import { z } from 'zod'
import { roles } from '../../contract/vocabulary.ts'
import { exportFiring } from '../../recordings/export.ts'
import { corrected } from '../../recordings/in/again.ts'
import { keptFile } from '../../recordings/in/kept-file.ts'
import { contentHash, linesOf } from '../../recordings/in/look.ts'
import { shelve } from '../../recordings/in/shelve.ts'
import { readRecording } from '../../recordings/read.ts'
import type { Answer, Question } from '../context.ts'
import { understood } from '../context.ts'
import { Problem } from '../problem.ts'
import { foreignNodes, recordOf } from '../routes/firings.ts'
import { houseFolds, notInDemo } from './in.ts'

const channel = z.string().min(1).max(200)
const schema = z.object({
  roles: z.record(channel, z.enum(roles)).default({}),
  calibration: z.record(channel, z.object({ gain: z.number().min(0.1).max(10), offset: z.number().min(-500).max(500) })).default({}),
})

/** A firing that is over, computed anew from its raw lines with roles or offsets put right. Both stay on the shelf. */
export async function playAgain(question: Question): Promise<Answer> {
  notInDemo(question)
  const { instance, who, body } = question
  const record = await recordOf(question)
  if (record.endedAt === null) throw new Problem('bad-request', [{ path: 'id', what: 'the firing is still going on' }])
  const correction = understood(schema, body)
  let text = await keptFile(instance.store, record.id)
  if (text === null) {
    text = ''
    for await (const page of exportFiring(instance.store, record, foreignNodes(instance, record.kiln))) text += page
  }
  const recording = corrected(readRecording(Buffer.from(text)), correction)
  const lines = linesOf(recording)
  const id = `again-${contentHash(lines).slice(0, 12)}`
  if (!(await instance.store.firing(id))) {
    await shelve(instance.store, houseFolds, { id, text: lines, recording })
    const json = JSON.stringify({ of: record.id, ...correction })
    await instance.store.putDocument({ kind: 'played-again', id, at: instance.now(), by: who, json })
  }
  return { json: { id }, status: 201 }
}
