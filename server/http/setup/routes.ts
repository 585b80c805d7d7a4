import { z } from 'zod'
import { kilnChanges } from '../../contract/learnt.ts'
import { rehearsalScenes } from '../../contract/setup.ts'
import type { SetupAnswer } from '../../contract/setup.ts'
import { alarmCodes } from '../../contract/vocabulary.ts'
import type { Answer, Question } from '../context.ts'
import { understood } from '../context.ts'
import { squareCode } from '../lots/square-code.ts'
import { Problem } from '../problem.ts'
import type { Box } from '../routes/box.ts'
import type { SetupDoor } from './door.ts'
import { kilnPatchSchema, withKiln } from './kiln-patch.ts'
import { allChanges, putAndNote } from './noted.ts'

const scene = z.enum(rehearsalScenes)
const heardWord = z.strictObject({
  what: z.enum([...rehearsalScenes, 'sound']),
  tablet: z.boolean().nullable(),
  buzzer: z.boolean().nullable(),
  told: z.enum(alarmCodes).nullable().default(null),
})
const pairAddress = /^https?:\/\/[\w.:[\]-]{1,80}\/pair\?code=[\w-]{10,100}$/

/** What the pages of the first run ask. The demo has a kiln of its own but neither buzzers nor settings. */
export function setupRoutes(box: Box, door: SetupDoor) {
  const ofThisBox = ({ instance }: Question) => {
    if (instance.demo) throw new Problem('not-allowed')
  }
  return {
    setup({ instance }: Question): Answer {
      const kilns = instance.kilns().flatMap((kiln) => {
        const config = instance.session(kiln)?.config
        return config ? [[kiln, config] as const] : []
      })
      const json: SetupAnswer = {
        now: instance.now(),
        offsetMin: -new Date(instance.now()).getTimezoneOffset(),
        clockSure: instance.clockSure(),
        clock: door.clockWord(),
        box: door.box(),
        probes: instance.probes(),
        kilns: Object.fromEntries(kilns),
        beeps: door.beeps(),
        rehearsal: door.rehearsal(),
        heard: door.heard(),
      }
      return { json }
    },
    async sayClock(question: Question): Promise<Answer> {
      ofThisBox(question)
      const { right } = understood(z.strictObject({ right: z.boolean() }), question.body)
      await door.sayClock(right, question.who)
      return { json: door.clockWord(), status: 201 }
    },
    async sayHeard(question: Question): Promise<Answer> {
      ofThisBox(question)
      await door.sayHeard(understood(heardWord, question.body), question.who)
      return { json: door.heard(), status: 201 }
    },
    beep(question: Question): Answer {
      ofThisBox(question)
      door.beep()
      return { json: door.beeps(), status: 201 }
    },
    startRehearsal(question: Question): Answer {
      ofThisBox(question)
      if (door.rehearse(understood(z.strictObject({ scene }), question.body).scene) !== 'started') throw new Problem('kiln-burns')
      return { json: door.rehearsal(), status: 201 }
    },
    endRehearsal(question: Question): Answer {
      ofThisBox(question)
      door.endRehearsal()
      return null
    },
    /** @param query `address`: the whole link that a tablet opens to be paired */
    pairCode({ query }: Question): Answer {
      const address = query.get('address') ?? ''
      if (!pairAddress.test(address)) throw new Problem('not-understood', [{ path: 'address', what: 'is no link that pairs a tablet' }])
      return new Response(squareCode(address), { headers: { 'content-type': 'image/svg+xml', 'cache-control': 'no-store' } })
    },
    async putKiln(question: Question): Promise<Answer> {
      ofThisBox(question)
      const patch = understood(kilnPatchSchema, question.body)
      const kiln = question.params['kiln'] ?? ''
      const wanted = withKiln(box.settings().values as Record<string, unknown>, kiln, patch)
      await putAndNote(box, question, wanted)
      return { json: question.instance.session(kiln)?.config ?? null }
    },
    /** What earlier firings taught of the kiln no longer counts, because of what was changed. */
    async forgetKiln(question: Question): Promise<Answer> {
      ofThisBox(question)
      const { instance, params, body, who } = question
      const { what } = understood(z.strictObject({ what: z.enum(kilnChanges) }), body)
      const kiln = params['kiln'] ?? ''
      if (!instance.session(kiln)) throw new Problem('unknown-kiln')
      await instance.forget(kiln, what, who)
      return { json: instance.session(kiln)?.config ?? null, status: 201 }
    },
    settingsChanges: async ({ instance }: Question): Promise<Answer> => ({ json: await allChanges(instance) }),
  }
}
