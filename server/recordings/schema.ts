import { z } from 'zod'
import { actIdSchema, actionSchema } from '../contract/act-schema.ts'
import type { KilnConfig, Limits } from '../contract/fold.ts'
import type { Prior } from '../contract/learnt.ts'
import { condenserKinds } from '../contract/plan.ts'
import { signs } from '../contract/setup.ts'
import { firingWays, healthCodes, roles } from '../contract/vocabulary.ts'

const time = z
  .string()
  .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:\d\d)$/, 'is no time like 2026-03-01T07:30:05.000Z')
  .refine((text) => Number.isFinite(Date.parse(text)), 'is no time of the calendar')

const charge = z.object({
  massKg: z.number().positive().optional(),
  moisturePct: z.number().min(0).max(95).optional(),
  pieceMm: z.number().positive().optional(),
})

const roleByChannel = z.record(z.string(), z.enum(roles))

const limitsShape = {
  smokeStartC: z.number(),
  smokeStopC: z.number(),
  condenserNoticeC: z.number(),
  condenserWarningC: z.number(),
  condenserOnDelayS: z.number(),
  condenserOffDelayS: z.number(),
  condenserDeadBandK: z.number(),
  fireLowC: z.number(),
  fireOutC: z.number(),
  openHottestC: z.number(),
  openMinimumWaitH: z.number(),
  coCautionPpm: z.number(),
  coLeavePpm: z.number(),
} satisfies Record<keyof Limits, z.ZodType>

const known = z.object({ mean: z.number(), sd: z.number().positive() })
const priorShape = {
  firings: z.number().int().min(1),
  unknowns: z.record(z.string(), known).optional(),
  stop: known.optional(),
  hours: known.optional(),
  night: z
    .array(z.object({ conditions: z.array(z.number()).max(40), warmthK: z.array(z.number().nullable()).max(60) }))
    .max(20)
    .optional(),
} satisfies Record<keyof Prior, z.ZodType>

/**
 * The settings of a kiln as an export carries them; only their shape is checked here, their bounds were checked when they were set.
 * A member that is not named here would be lost on the way in, so the compiler asks for each.
 */
const configShape = {
  kiln: z.string().min(1),
  name: z.string(),
  volumeL: z.number().positive(),
  cover: z.enum(['earth', 'none', 'brick']),
  way: z.enum(firingWays),
  charge,
  roles: roleByChannel,
  calibration: z.record(z.string(), z.object({ gain: z.number(), offset: z.number() })),
  limits: z.object(limitsShape),
  worth: z.object({ good: z.number(), tarry: z.number(), watery: z.number() }),
  altitudeM: z.number(),
  sign: z.enum(signs).optional(),
  bottleL: z.number().positive().optional(),
  condenser: z.enum(condenserKinds).optional(),
  seed: z.number(),
  prior: z.object(priorShape).optional(),
} satisfies Record<keyof KilnConfig, z.ZodType>
const configSchema = z.object(configShape)

export const headerSchema = z.object({
  recording: z.literal(1),
  title: z.string().optional(),
  kiln: z.object({ volumeL: z.number().positive().optional(), cover: z.string().optional(), way: z.string().optional() }).optional(),
  charge: charge.optional(),
  roles: roleByChannel.optional(),
  demo: z.boolean().optional(),
  start: z
    .object({ at: time, seq: z.number().int().min(0), config: configSchema, intake: z.base64(), version: z.number().int() })
    .optional(),
})

const message = z.object({ at: time, topic: z.string().min(1), payload: z.unknown(), retained: z.boolean().optional() })
const bytes = z.object({ at: time, topic: z.string().min(1), bytes: z.base64(), retained: z.boolean().optional() })
const stampedAct = z.object({ at: time, id: actIdSchema.optional(), doneAt: time.optional(), corrects: actIdSchema.optional() })
const config = z.object({ at: time, config: configSchema })
const health = z.object({ at: time, health: z.enum(healthCodes), on: z.boolean() })

/** Some 15 kB each as the page makes them; much more is not one of its pictures. */
export const largestPictureBytes = 60_000
export const pictureSchema = z.object({
  picture: actIdSchema,
  type: z.enum(['image/jpeg', 'image/webp']),
  base64: z.base64().max(Math.ceil(largestPictureBytes / 3) * 4),
})

/** The schema that a line has to meet, chosen by what it carries. */
export function lineSchema(line: object): z.ZodType {
  if ('topic' in line) return 'bytes' in line ? bytes : message
  if ('action' in line) return z.intersection(stampedAct, actionSchema)
  if ('config' in line) return config
  if ('health' in line) return health
  return z.never('carries neither topic, action, config nor health')
}
