import { z } from 'zod'
import { alarmCodes, dripLooks, openings, smokeLooks, weathers } from './vocabulary.ts'

const channel = z.string().min(1).max(200)
const alarm = { alarm: z.enum(alarmCodes), channel: channel.optional() }

/** Bounds keep nonsense out, they are no limits of the trade. Masses kg, temperatures °C, volumes litres. */
const bare = z.discriminatedUnion('action', [
  z.object({
    action: z.literal('load'),
    massKg: z.number().positive().max(100_000).optional(),
    moisturePct: z.number().min(0).max(95).optional(),
    pieceMm: z.number().positive().max(2000).optional(),
    drumC: z.number().min(-60).max(1500).optional(),
    earthC: z.number().min(-60).max(1500).optional(),
  }),
  z.object({ action: z.literal('light') }),
  z.object({ action: z.literal('start-collecting') }),
  z.object({ action: z.literal('stop-collecting') }),
  z.object({ action: z.literal('refuel') }),
  z.object({ action: z.literal('wet-condenser') }),
  z.object({ action: z.literal('swap-bottle'), litres: z.number().min(0).max(1000).optional() }),
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
    charcoalKg: z.number().min(0).max(100_000).optional(),
    finesKg: z.number().min(0).max(100_000).optional(),
  }),
  z.object({
    action: z.literal('glass'),
    number: z.number().int().min(0).max(10_000),
    drip: z.enum(dripLooks).optional(),
    photo: z.boolean().optional(),
  }),
  z.object({ action: z.literal('observe'), smoke: z.enum(smokeLooks).optional(), drip: z.enum(dripLooks).optional() }),
  z.object({ action: z.literal('note'), text: z.string().max(4000) }),
  z.object({ action: z.literal('reading'), channel, value: z.number().min(-50).max(3000) }),
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
