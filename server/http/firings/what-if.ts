import { setImmediate as pause } from 'node:timers/promises'
import { readRecordingInSlices } from '../../recordings/read.ts'
import type { Recording } from '../../recordings/read.ts'
import { countAlarms, limitsOf } from '../../recordings/what-if.ts'
import type { Limits } from '../../contract/fold.ts'
import type { WhatIfAnswer } from '../../contract/setup.ts'
import { limitsSchema } from '../../settings/limits.ts'
import type { Answer, Question } from '../context.ts'
import { understood } from '../context.ts'
import { closedRecordOf, rawText } from '../routes/firings.ts'

/** What other limits would have done to a firing that is over; in slices, for the same loop watches a fire. Changes nothing. */
export async function whatIf(question: Question): Promise<Answer> {
  const { instance, body } = question
  const limits = understood(limitsSchema, body)
  const record = await closedRecordOf(question)
  const recording = await readRecordingInSlices(await rawText(instance, record), () => pause())
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
