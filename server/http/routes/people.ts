import { z } from 'zod'
import type { Answer, Question } from '../context.ts'
import { numberOf, understood } from '../context.ts'
import { cookieFor } from '../guard.ts'
import type { People } from '../people.ts'
import { Problem } from '../problem.ts'

/** How a tablet becomes one of ours: a QR link carries an invitation that is good once. */
export function peopleRoutes(people: People) {
  return {
    whoAmI: ({ who }: Question): Answer => ({ json: { person: who, fresh: people.isNew() } }),
    devices: (): Answer => ({ json: people.list() }),
    invite({ body }: Question): Answer {
      const { person, label } = understood(
        z.object({ person: z.enum(['viewer', 'operator', 'owner']), label: z.string().max(60).default('') }),
        body,
      )
      return { json: { code: people.invite(person, label) }, status: 201 }
    },
    async pair({ body, from, secure }: Question): Promise<Answer> {
      const { code } = understood(z.object({ code: z.string().min(1).max(100) }), body)
      const paired = await people.pairFrom(from, code)
      return { json: { person: paired.device.person }, headers: { 'set-cookie': cookieFor(paired.secret, secure) } }
    },
    register({ query }: Question): Answer {
      const limit = numberOf(query, 'limit', { low: 1, high: 1000, standard: 200 })
      return { json: { whole: people.register.whole(), lines: people.register.newest(limit) } }
    },
    async removeDevice({ params }: Question): Promise<Answer> {
      if (!(await people.remove(params.id ?? ''))) throw new Problem('not-found')
      return null
    },
  }
}
