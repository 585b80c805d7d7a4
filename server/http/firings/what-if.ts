import { setImmediate as pause } from 'node:timers/promises'
import { exportFiring } from '../../recordings/export.ts'
import { keptFile } from '../../recordings/in/kept-file.ts'
import { readRecordingInSlices } from '../../recordings/read.ts'
import type { Recording } from '../../recordings/read.ts'
import { countAlarms, limitsOf } from '../../recordings/what-if.ts'
import type { Limits } from '../../contract/fold.ts'
import type { WhatIfAnswer } from '../../contract/setup.ts'
import { limitsSchema } from '../../settings/limits.ts'
import type { Answer, Question } from '../context.ts'
import { understood } from '../context.ts'
import { Problem } from '../problem.ts'
import { foreignNodes, recordOf } from '../routes/firings.ts'

/** What other limits would have done to a firing that is over; in slices, for the same loop watches a fire. Changes nothing. */
export async function whatIf(question: Question): Promise<Answer> {
  const { instance, body } = question
  const limits = understood(limitsSchema, body)
  const record = await recordOf(question)
  if (record.endedAt === null) throw new Problem('bad-request', [{ path: 'id', what: 'the firing is still going on' }])
  let text = await keptFile(instance.store, record.id)
  if (text === null) {
    text = ''
    for await (const page of exportFiring(instance.store, record, foreignNodes(instance, record.kiln))) text += page
  }
  const recording = await readRecordingInSlices(text, () => pause())
  const json: WhatIfAnswer = { alarmed: await counted(recording, limitsOf(recording)), would: await counted(recording, limits) }
  return { json }
}

async function counted(recording: Recording, limits: Limits): Promise<number> {
  const count = countAlarms(recording, limits)
  for (;;) {
    const step = count.next()
    if (step.done) return step.value
    await pause()
  }
}
