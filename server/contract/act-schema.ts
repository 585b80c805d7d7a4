import { z } from 'zod'
import { actBounds, type Bounds } from './act-bounds.ts'
import { alarmCodes, dripLooks, openings, smokeLooks, weathers } from './vocabulary.ts'

const channel = z.string().min(1).max(200)
const alarm = { alarm: z.enum(alarmCodes), channel: channel.optional() }

const within = ({ low, high }: Bounds) => z.number().min(low).max(high)

const bare = z.discriminatedUnion('action', [
  z.object({
    action: z.literal('load'),
    massKg: within(actBounds.massKg).optional(),
    moisturePct: within(actBounds.moisturePct).optional(),
    pieceMm: within(actBounds.pieceMm).optional(),
    drumC: within(actBounds.groundC).optional(),
    earthC: within(actBounds.groundC).optional(),
  }),
  z.object({ action: z.literal('light') }),
  z.object({ action: z.literal('start-collecting') }),
  z.object({ action: z.literal('stop-collecting') }),
  z.object({ action: z.literal('refuel') }),
  z.object({ action: z.literal('wet-condenser') }),
  z.object({ action: z.literal('swap-bottle'), litres: within(actBounds.litres).optional() }),
  z.object({ action: z.literal('stop-feeding') }),
  z.object({ action: z.literal('air'), mouth: z.enum(openings).optional(), chimney: z.enum(openings).optional() }),
  z.object({ action: z.literal('refine') }),
  z.object({ action: z.literal('weather'), weather: z.enum(weathers) }),
  z.object({ action: z.literal('seal') }),
  z.object({ action: z.literal('crack') }),
  z.object({ action: z.literal('reseal') }),
  z.object({ action: z.literal('open') }),
  z.object({
    action: z.literal('unload'),
    charcoalKg: within(actBounds.charcoalKg).optional(),
    finesKg: within(actBounds.charcoalKg).optional(),
  }),
  z.object({
    action: z.literal('glass'),
    number: z.number().int().min(0).max(10_000),
    drip: z.enum(dripLooks).optional(),
    photo: z.boolean().optional(),
  }),
  z.object({ action: z.literal('observe'), smoke: z.enum(smokeLooks).optional(), drip: z.enum(dripLooks).optional() }),
  z.object({ action: z.literal('note'), text: z.string().max(4000) }),
  z.object({ action: z.literal('reading'), channel, value: within(actBounds.readingC) }),
  z.object({ action: z.literal('arm'), tablet: z.boolean().optional(), buzzer: z.boolean().optional() }),
  z.object({ action: z.literal('acknowledge'), ...alarm }),
  z.object({ action: z.literal('shelve'), ...alarm, minutes: z.number().positive().max(1440) }),
  z.object({ action: z.literal('unshelve'), ...alarm }),
])

/** A charge may stand in `load` as an object of its own, as the header writes it. */
function flattenCharge(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value
  const { charge, ...rest } = value as Record<string, unknown>
  return typeof charge === 'object' && charge !== null ? { ...charge, ...rest } : value
}

/** What a person did or saw; unknown members are dropped, an unknown action is a problem. */
export const actionSchema = z.preprocess(flattenCharge, bare)

export const actIdSchema = z
  .string()
  .min(1)
  .max(80)
  .regex(/^[\x21-\x7e]+$/)
