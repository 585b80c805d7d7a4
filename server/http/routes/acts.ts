import { z } from 'zod'
import { actIdSchema, actionSchema } from '../../contract/act-schema.ts'
import type { Action } from '../../contract/actions.ts'
import { ActProblem } from '../../runtime/site.ts'
import type { Answer, Question } from '../context.ts'
import { understood } from '../context.ts'
import { Problem } from '../problem.ts'

const schema = z.object({
  id: actIdSchema,
  kiln: z.string().min(1).max(64),
  act: actionSchema,
  doneAt: z.number().finite().optional(),
  corrects: actIdSchema.optional(),
})

/** Taken once, whatever number of times it is sent; answered after COMMIT. */
export async function takeAct({ instance, body }: Question): Promise<Answer> {
  const { id, kiln, act, doneAt, corrects } = understood(schema, body)
  try {
    await instance.act(kiln, {
      id,
      act: act as Action,
      doneAt: doneAt ?? instance.now(),
      ...(corrects === undefined ? {} : { corrects }),
    })
  } catch (problem) {
    throw problem instanceof ActProblem ? new Problem(problem.code) : new Problem('storage-failing')
  }
  return { json: { taken: id } }
}
