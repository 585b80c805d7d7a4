import { z } from 'zod'
import type { StoredDocument } from '../../storage/store.ts'
import type { Answer, Question } from '../context.ts'
import { understood } from '../context.ts'
import { Problem } from '../problem.ts'

/** Kinds that the page may keep here; what the service keeps for itself (paired devices) is none of them. */
const kind = z.enum(['lot', 'check', 'note', 'plan', 'glass', 'charge', 'result', 'vessel', 'spray', 'season', 'played-again'])
const id = z.string().regex(/^[A-Za-z0-9._-]{1,80}$/, 'must be 1 to 80 letters, digits, dots, hyphens')
const kindOf = ({ params }: Question) => understood(kind, params.kind)

export async function listDocuments(question: Question): Promise<Answer> {
  return { json: (await question.instance.store.documents(kindOf(question))).map(shown) }
}

export async function documentHistory(question: Question): Promise<Answer> {
  const revisions = await question.instance.store.history(kindOf(question), understood(id, question.params.id))
  if (revisions.length === 0) throw new Problem('not-found')
  return { json: revisions.map(shown) }
}

/** A later revision; nothing is erased. */
export async function putDocument(question: Question): Promise<Answer> {
  const { instance, who, body } = question
  if (typeof body !== 'object' || body === null) throw new Problem('not-understood', [{ path: '', what: 'must be a JSON object' }])
  const document = {
    kind: kindOf(question),
    id: understood(id, question.params.id),
    at: instance.now(),
    by: who,
    json: JSON.stringify(body),
  }
  return { json: { revision: await instance.store.putDocument(document) }, status: 201 }
}

function shown({ id, revision, at, by, json }: StoredDocument): unknown {
  return { id, revision, at, by, document: JSON.parse(json) as unknown }
}
