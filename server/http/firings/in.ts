import { z } from 'zod'
import { columnKinds, separators, timeWays } from '../../contract/imports.ts'
import { keepGlassPicture } from '../../recordings/glasses.ts'
import { lookAt } from '../../recordings/in/look.ts'
import type { Looked } from '../../recordings/in/look.ts'
import { shelve } from '../../recordings/in/shelve.ts'
import { houseFolds } from '../../runtime/house-folds.ts'
import type { Answer, Question } from '../context.ts'
import { understood } from '../context.ts'
import { Problem } from '../problem.ts'

const matchSchema = z.object({
  separator: z.enum(separators),
  decimal: z.enum(['.', ',']),
  time: z.enum(timeWays),
  offsetMin: z.number().int().min(-840).max(840),
  startAt: z.string().max(40).nullable(),
  unit: z.enum(['C', 'F']),
  columns: z.array(z.enum(columnKinds)).max(200),
})

async function looked({ instance, body, query }: Question): Promise<Looked> {
  if (!(body instanceof Uint8Array)) throw new Problem('wrong-type')
  const name = understood(z.string().max(200), query.get('name') ?? '')
  return lookAt(instance.store, body, name, matchOf(query.get('match')))
}

function matchOf(text: string | null): z.infer<typeof matchSchema> | null {
  if (text === null) return null
  try {
    return understood(matchSchema, JSON.parse(text))
  } catch (problem) {
    throw problem instanceof Problem ? problem : new Problem('not-understood', [{ path: 'match', what: 'is no JSON' }])
  }
}

/** The demo lives in memory and everybody may act in it: nothing large is put there. */
export function notInDemo({ instance }: Question): void {
  if (instance.demo) throw new Problem('not-allowed')
}

/** What a file would become; nothing is kept. `name`: of the file; `match`: JSON of a CsvMatch. */
export async function lookAtImport(question: Question): Promise<Answer> {
  return { json: (await looked(question)).preview }
}

/** Plays it and puts it on the shelf. The same file again is taken and changes nothing. */
export async function keepImport(question: Question): Promise<Answer> {
  notInDemo(question)
  const { preview, file } = await looked(question)
  if (file === null) {
    const details = preview.problems.map(({ line, code, found }) => ({
      path: line === null ? 'file' : `line ${line}`,
      what: `${code} ${found}`,
    }))
    throw new Problem('bad-import', details)
  }
  const { store, now } = question.instance
  if (!preview.known) await shelve(store, houseFolds, file)
  // also of a firing that came without them before
  const kiln = (await store.firing(file.id))?.kiln ?? ''
  for (const { picture, ...one } of file.pictures) {
    await keepGlassPicture(store, { kiln, act: picture, at: now(), by: question.who }, one)
  }
  return { json: { id: file.id }, status: 201 }
}
