import { z } from 'zod'
import type { Act } from '../../contract/actions.ts'
import { actionNames } from '../../contract/actions.ts'
import type { Ms, Output } from '../../contract/fold.ts'
import type { FiringSummary } from '../../contract/live.ts'
import { alarmCodes, alarmStates, calls, phases, priorities, roles } from '../../contract/vocabulary.ts'
import type { CurveSeries } from '../../storage/store.ts'

const time = z.iso.datetime().describe('ISO 8601, UTC')
const reason = z.object({
  code: z.string(),
  value: z.number().optional(),
  limit: z.number().optional(),
  forS: z.number().optional().describe('how long it has held, s'),
  channel: z.string().optional(),
})

/** One firing for other programs; the JSON Schema that the box serves is made from this and nothing else. */
export const documentSchema = z
  .object({
    firing: z.literal(1).describe('version of this form'),
    id: z.string(),
    title: z.string(),
    kiln: z.string(),
    kilnName: z.string(),
    demo: z.boolean().describe('made-up data'),
    startedAt: time,
    endedAt: time.nullable(),
    charge: z.object({
      massKg: z.number().optional().describe('as loaded, kg'),
      moisturePct: z.number().optional().describe('of the whole (wet basis), %'),
      pieceMm: z.number().optional(),
    }),
    phases: z.array(z.object({ phase: z.enum(phases), from: time, to: time.nullable() })),
    calls: z.array(z.object({ at: time, call: z.enum(calls), state: z.enum(['due', 'done', 'withdrawn']), because: z.array(reason) })),
    alarms: z.array(
      z.object({
        at: time,
        alarm: z.enum(alarmCodes),
        channel: z.string().optional(),
        state: z.enum(alarmStates),
        priority: z.enum(priorities),
        because: z.array(reason),
      }),
    ),
    log: z.array(
      z.object({
        id: z.string(),
        at: time.describe('when it was entered'),
        doneAt: time,
        corrects: z.string().optional().describe('id of the entry that it puts right'),
        act: z.looseObject({ action: z.enum(actionNames) }),
      }),
    ),
    notes: z.array(z.object({ at: time, by: z.string(), note: z.unknown() })),
    readings: z
      .array(
        z.object({
          of: z.enum([...roles, 'smoke-estimated']),
          unit: z.enum(['Cel', 'kg', 'ppm']).describe('SenML units; ppm for carbon monoxide'),
          t: z.array(z.number().int()).describe('ms since 1970, UTC'),
          value: z.array(z.number().nullable()).describe('null is a gap'),
        }),
      )
      .describe('thinned, with minima and maxima kept'),
  })
  .describe('One firing of a kiln')

export type FiringDocument = z.infer<typeof documentSchema>

/** JSON Schema, draft 2020-12. */
export function publishedSchema(): object {
  return z.toJSONSchema(documentSchema)
}

interface Parts {
  firing: FiringSummary
  charge: FiringDocument['charge']
  outputs: readonly Output[]
  acts: readonly Act[]
  notes: readonly { at: Ms; by: string; json: string }[]
  lines: readonly CurveSeries[]
}

const iso = (at: Ms): string => new Date(at).toISOString()

export function documentOfFiring({ firing, charge, outputs, acts, notes, lines }: Parts): FiringDocument {
  const { id, title, kiln, kilnName, demo, startedAt, endedAt } = firing
  return {
    firing: 1,
    id,
    title,
    kiln,
    kilnName,
    demo,
    startedAt: iso(startedAt),
    endedAt: endedAt === null ? null : iso(endedAt),
    charge,
    phases: firing.phases.map(({ phase, from, to }) => ({ phase, from: iso(from), to: to === null ? null : iso(to) })),
    calls: outputs.flatMap((output) =>
      output.kind === 'call' ? [{ at: iso(output.at), call: output.call, state: output.state, because: output.because }] : [],
    ),
    alarms: outputs.flatMap((output) => {
      if (output.kind !== 'alarm') return []
      const { at, alarm, channel, state, priority, because } = output
      return [{ at: iso(at), alarm, ...(channel === undefined ? {} : { channel }), state, priority, because }]
    }),
    log: acts.map(({ id: actId, at, doneAt, corrects, act }) => ({
      id: actId,
      at: iso(at),
      doneAt: iso(doneAt),
      ...(corrects === undefined ? {} : { corrects }),
      act: { ...act },
    })),
    notes: notes.map(({ at, by, json }) => ({ at: iso(at), by, note: JSON.parse(json) as unknown })),
    readings: lines.map(({ role, t, value }) => ({ of: role, unit: role === 'bottle' ? 'kg' : role === 'co' ? 'ppm' : 'Cel', t, value })),
  }
}
