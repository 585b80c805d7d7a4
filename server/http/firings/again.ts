import { setImmediate as pause } from 'node:timers/promises'
import { z } from 'zod'
import { roles } from '../../contract/vocabulary.ts'
import { corrected } from '../../recordings/in/again.ts'
import { contentHash, linesInSlices } from '../../recordings/in/look.ts'
import { shelve } from '../../recordings/in/shelve.ts'
import { readRecordingInSlices } from '../../recordings/read.ts'
import { houseFolds } from '../../runtime/house-folds.ts'
import type { Answer, Question } from '../context.ts'
import { understood } from '../context.ts'
import { closedRecordOf, rawText } from '../routes/firings.ts'
import { notInDemo } from './in.ts'

const channel = z.string().min(1).max(200)
const schema = z.object({
  roles: z.record(channel, z.enum(roles)).default({}),
  calibration: z.record(channel, z.object({ gain: z.number().min(0.1).max(10), offset: z.number().min(-500).max(500) })).default({}),
})

/** A firing that is over, computed anew from its raw lines with roles or offsets put right; in slices, for the same loop watches a fire. Both stay on the shelf. */
export async function playAgain(question: Question): Promise<Answer> {
  notInDemo(question)
  const { instance, who, body } = question
  const record = await closedRecordOf(question)
  const correction = understood(schema, body)
  const recording = corrected(await readRecordingInSlices(await rawText(instance, record), () => pause()), correction)
  const lines = await linesInSlices(recording)
  const id = `again-${contentHash(lines).slice(0, 12)}`
  if (!(await instance.store.firing(id))) {
    await shelve(instance.store, houseFolds, { id, text: lines, recording })
    const json = JSON.stringify({ of: record.id, ...correction })
    await instance.store.putDocument({ kind: 'played-again', id, at: instance.now(), by: who, json })
  }
  return { json: { id }, status: 201 }
}
