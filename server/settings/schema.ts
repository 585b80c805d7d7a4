import { z } from 'zod'
import { defaultKilnConfig, usualBottleL } from '../contract/kiln-defaults.ts'
import { condenserKinds } from '../contract/plan.ts'
import { signs } from '../contract/setup.ts'
import { firingWays, roles } from '../contract/vocabulary.ts'
import { limitsSchema } from './limits.ts'

export const settingsVersion = 1

const standard = defaultKilnConfig()
const port = (standardPort: number, text: string) =>
  z.number().int().min(0).max(65_535).default(standardPort).meta({ description: text, restart: true })
/** Wire format, "Topics": small letters, digits and hyphens, starting with a letter. */
const topicLevel = z.string().regex(/^[a-z][a-z0-9-]{0,31}$/, 'must be 1 to 32 of a-z, 0-9 and -, starting with a letter')
const channel = z.string().regex(/^[^/]+\/[^/]+\/.+$/, 'must be a channel like yard/n1/wall')
const worth = (standardWorth: number, text: string) =>
  z.number().min(-100).max(100).default(standardWorth).meta({ description: text, source: 'common practice, no source' })

const kilnSchema = z.strictObject({
  kiln: topicLevel.default(standard.kiln).meta({ description: 'Short name of the kiln in topics and files; it stays for ever.' }),
  name: z.string().max(80).default('').meta({ description: 'What the people call it.' }),
  sign: z.enum(signs).optional().meta({ description: 'Its painted sign.' }),
  volumeL: z.number().min(20).max(20_000).default(standard.volumeL).meta({ description: 'Volume of the drum or chamber.', unit: 'L' }),
  cover: z.enum(['earth', 'none', 'brick']).default(standard.cover).meta({ description: 'What lies around the drum.' }),
  way: z
    .enum(firingWays)
    .default(standard.way)
    .meta({ description: 'The small fire is kept to the end, or the charge is let run by itself.' }),
  bottleL: z.number().min(0.2).max(60).default(usualBottleL).meta({ description: 'What the bottle under the outlet holds.', unit: 'L' }),
  condenser: z.enum(condenserKinds).optional().meta({ description: 'How the smoke is cooled.' }),
  roles: z
    .record(channel, z.enum(roles))
    .default({})
    .meta({ description: 'Which probe measures what; a channel named after a role takes it by itself.' }),
  calibration: z
    .record(channel, z.strictObject({ gain: z.number().min(0.5).max(2), offset: z.number().min(-50).max(50) }))
    .default({})
    .meta({ description: 'Field calibration: value = gain × reading + offset.', unit: 'Cel' }),
  limits: limitsSchema.prefault({}),
  worth: z
    .strictObject({
      good: worth(standard.worth.good, 'Worth of a kilogram of good condensate.'),
      tarry: worth(standard.worth.tarry, 'Worth of a kilogram of tar-laden condensate.'),
      watery: worth(standard.worth.watery, 'Worth of a kilogram of watery condensate.'),
    })
    .prefault({}),
  altitudeM: z
    .number()
    .min(-430)
    .max(6000)
    .default(0)
    .meta({ description: 'Height above the sea; water boils cooler up there.', unit: 'm' }),
  seed: z
    .number()
    .int()
    .min(0)
    .max(2_147_483_647)
    .default(1)
    .meta({ description: 'Start of the estimator’s own chance, kept so that a replay tells the same.' }),
})

/** Everything that can be set: types, limits, defaults, units and what each does. The set-up form is drawn from it. */
export const settingsSchema = z.strictObject({
  version: z.literal(settingsVersion).default(settingsVersion).meta({ description: 'Version of this file.' }),
  host: z.string().min(1).default('0.0.0.0').meta({ description: 'Address to listen on; 127.0.0.1 for this machine only.', restart: true }),
  port: port(8420, 'Port of the page; 0 takes a free one.'),
  mqttPort: port(1883, 'Port of the broker for the sensor nodes; 0 takes a free one.'),
  broker: z
    .string()
    .regex(/^mqtts?:\/\/[^\s]+$/, 'must be an address like mqtt://192.168.1.5:1883')
    .nullable()
    .default(null)
    .meta({ description: 'An outside broker in place of the embedded one.', restart: true }),
  root: topicLevel.default('firing').meta({ description: 'First level of every topic.', restart: true }),
  site: topicLevel.default('yard').meta({ description: 'Name of this place in every topic.', restart: true }),
  logLevel: z.enum(['error', 'warn', 'info', 'debug']).default('info').meta({ description: 'How much is logged.', restart: true }),
  names: z
    .array(z.string().min(1).max(253))
    .default([])
    .meta({ description: 'Names under which this box may be opened, beside its addresses.', restart: true }),
  viewersWithoutLogin: z
    .boolean()
    .default(false)
    .meta({ description: 'Anybody in the network may look on; acting still needs a paired tablet.' }),
  certificate: z
    .string()
    .min(1)
    .nullable()
    .default(null)
    .meta({ description: 'PEM file of a certificate: page and broker then speak TLS only.', restart: true }),
  certificateKey: z
    .string()
    .min(1)
    .nullable()
    .default(null)
    .meta({ description: 'PEM file of the key of the certificate.', restart: true }),
  onlyPairedNodes: z
    .boolean()
    .default(false)
    .meta({ description: 'Only nodes whose secret the owner confirmed may send; a message sent by hand is refused then.' }),
  kilns: z
    .array(kilnSchema)
    .min(1)
    .max(8)
    .default(() => [kilnSchema.parse({})])
    .refine((kilns) => new Set(kilns.map((one) => one.kiln)).size === kilns.length, 'two kilns have the same short name'),
})

export type Settings = z.infer<typeof settingsSchema>
export type KilnSettings = Settings['kilns'][number]

/** The form's own data: JSON Schema (2020-12) with `unit`, `source` and `restart` beside the standard words. */
export function settingsForm(): unknown {
  return z.toJSONSchema(settingsSchema, { io: 'input' })
}
