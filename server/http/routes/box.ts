import { z } from 'zod'
import type { Answer, Question } from '../context.ts'
import { numberOf, understood } from '../context.ts'
import { Problem } from '../problem.ts'
import { putAndNote } from '../setup/noted.ts'

/** What the web asks of the box beside its sites. */
export interface Box {
  version: string
  settings(): { form: unknown; values: unknown; fixed: readonly string[] }
  /** @returns what is wrong with them, empty when they were taken; `restart` names what counts only after a restart */
  putSettings(values: unknown): Promise<{ problems: { path: string; what: string }[]; restart: string[] }>
  /** @param anew from its beginning also where one plays; one that has ended always begins anew */
  startDemo(speed: number, anew: boolean): Promise<'playing' | 'no-demo'>
  stopDemo(): Promise<void>
}

export function boxRoutes(box: Box) {
  return {
    health({ instance }: Question): Answer {
      const { health } = instance.siteView()
      return { json: { version: box.version, now: instance.now(), clockSure: instance.clockSure(), health } }
    },
    async quarantine({ instance, query }: Question): Promise<Answer> {
      const limit = numberOf(query, 'limit', { low: 1, high: 500, standard: 100 })
      const items = await instance.store.quarantined(limit)
      const json = items.map(({ payload, ...item }) => ({ ...item, payload: Buffer.from(payload).toString('base64') }))
      return { json }
    },
    settings: (): Answer => ({ json: box.settings() }),
    async putSettings(question: Question): Promise<Answer> {
      if (question.instance.demo) throw new Problem('not-allowed')
      const { restart } = await putAndNote(box, question, question.body)
      return { json: { ...box.settings(), restart } }
    },
    async startDemo({ body }: Question): Promise<Answer> {
      const wanted = z.object({ speed: z.number().min(1).max(600).default(60), anew: z.boolean().default(false) })
      const { speed, anew } = understood(wanted, body ?? {})
      const result = await box.startDemo(speed, anew)
      if (result !== 'playing') throw new Problem(result)
      return { json: { playing: true, speed } }
    },
    async stopDemo(): Promise<Answer> {
      await box.stopDemo()
      return null
    },
  }
}
