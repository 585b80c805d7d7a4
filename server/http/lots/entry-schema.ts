import { z } from 'zod'
import type { LotEvent } from '../../contract/lots.ts'
import { clarities, colours, layerNames, lossReasons, normIds, probePlaces, vesselMaterials } from '../../contract/lots.ts'

const lot = z.string().min(1).max(60)
const text = z.string().max(200)
const number = z.number()
const vessel = z.strictObject({
  name: z.string().max(60),
  material: z.enum(vesselMaterials),
  capacityMl: number,
  heightMm: number.optional(),
  place: text.optional(),
})
const bottle = z.strictObject({
  number,
  volumeMl: number,
  from: number,
  to: number,
  smoke: z
    .strictObject({ lowC: number, highC: number, by: z.enum(['probe', 'estimate']), probeAt: z.enum(probePlaces).nullable() })
    .nullable(),
})
const part = { lot, volumeMl: number }

/** The shape of what may be entered of a lot. Whether its numbers can be right is for the domain, which says what to enter instead. */
const event = z.discriminatedUnion('what', [
  z.strictObject({
    what: z.literal('fill'),
    lot,
    firing: text.nullable(),
    bottles: z.array(bottle).max(500),
    vessel,
    wood: text.optional(),
    treatedWood: z.boolean().optional(),
    distilled: z.boolean().optional(),
    demo: z.boolean().optional(),
  }),
  z.strictObject({ what: z.literal('join'), lot, from: z.array(z.strictObject(part)).max(100), vessel }),
  z.strictObject({ what: z.literal('split'), lot, into: z.array(z.strictObject({ ...part, vessel })).max(100) }),
  z.strictObject({ what: z.literal('move'), lot, vessel, lossMl: number }),
  z.strictObject({ what: z.literal('layers'), lot, lightOilMl: number, vinegarMl: number, tarMl: number }),
  z.strictObject({
    what: z.literal('draw'),
    lot,
    layer: z.enum(layerNames),
    volumeMl: number,
    lossMl: number,
    into: z.strictObject({ lot, vessel }).optional(),
  }),
  z.strictObject({ what: z.literal('loss'), ...part, why: z.enum(lossReasons) }),
  z.strictObject({ what: z.literal('use'), ...part, use: text, waterMl: number, field: text.optional() }),
  z.strictObject({ what: z.literal('give'), ...part, to: text.optional() }),
  z.strictObject({
    what: z.literal('check'),
    lot,
    norm: z.enum(normIds),
    values: z.strictObject({
      ph: number.optional(),
      density: z.strictObject({ gPerMl: number, atC: number, hydrometerC: number.optional() }).optional(),
      acidityPct: number.optional(),
      colour: z.enum(colours).optional(),
      clarity: z.enum(clarities).optional(),
      dissolvedTarPct: number.optional(),
    }),
  }),
  z.strictObject({
    what: z.literal('charcoal'),
    lot,
    firing: text.nullable(),
    massG: number,
    finesG: number,
    wood: text.optional(),
    demo: z.boolean().optional(),
  }),
  z.strictObject({
    what: z.literal('charcoal-check'),
    lot,
    values: z.strictObject({
      fixedCarbonPct: number.optional(),
      ashPct: number.optional(),
      moisturePct: number.optional(),
      over80Pct: number.optional(),
      over20Pct: number.optional(),
      under10Pct: number.optional(),
      bulkKgPerM3: number.optional(),
    }),
  }),
  z.strictObject({ what: z.literal('air'), lot }),
  z.strictObject({ what: z.literal('store'), lot, place: text, pileC: number.optional() }),
  z.strictObject({ what: z.literal('charcoal-out'), lot, massG: number, to: text.optional() }),
  z.strictObject({ what: z.literal('void') }),
])

/** What a page sends: the service adds when, who and how sure its clock was. */
export const lotWordSchema = z.strictObject({
  id: z.string().min(1).max(80),
  event,
  doneAt: number.int().optional(),
  /** The calendar date at which it was done, where it was not today. */
  date: z.string().max(20).optional(),
  corrects: z.string().max(80).optional(),
})

/** An optional member that was sent as `undefined` can not arrive in JSON, so the parsed event is the contract's own. */
export interface LotWord {
  id: string
  event: LotEvent
  doneAt?: number
  date?: string
  corrects?: string
}
