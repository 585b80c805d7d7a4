import { z } from 'zod'
import type { TurnedAway } from '../../contract/setup.ts'
import type { Answer, Question } from '../context.ts'
import { understood } from '../context.ts'
import { Problem } from '../problem.ts'

/** What the web asks of the nodes' secrets; there is none where the broker is another's. */
export interface NodeDoor {
  list(): { node: string; state: 'held' | 'paired'; at: number; fingerprint: string }[]
  confirm(node: string): Promise<boolean>
  make(node: string): Promise<string | null>
  remove(node: string): Promise<boolean>
  turnedAway(): TurnedAway
}

export function nodeRoutes(door: NodeDoor | undefined) {
  const own = ({ instance }: Question): NodeDoor => {
    if (!door || instance.demo) throw new Problem('not-found')
    return door
  }
  return {
    nodeKeys: (question: Question): Answer => ({ json: own(question).list() }),
    nodeRefusals: (question: Question): Answer => ({ json: own(question).turnedAway() }),
    /** `confirm`: the secret that the node showed first is its own; `make`: a new one, told in this answer and never again. */
    async pairNode(question: Question): Promise<Answer> {
      const { way } = understood(z.strictObject({ way: z.enum(['confirm', 'make']) }), question.body)
      const node = question.params['node'] ?? ''
      if (way === 'confirm') {
        if (!(await own(question).confirm(node))) throw new Problem('not-found')
        return { json: { node, secret: null }, status: 201 }
      }
      const secret = await own(question).make(node)
      if (secret === null) throw new Problem('not-understood', [{ path: 'node', what: 'must be a-z, 0-9 and -, starting with a letter' }])
      return { json: { node, secret }, status: 201 }
    },
    async forgetNode(question: Question): Promise<Answer> {
      if (!(await own(question).remove(question.params['node'] ?? ''))) throw new Problem('not-found')
      return null
    },
  }
}
