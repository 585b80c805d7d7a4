import type { EntryProblem } from './entry-problems.ts'
import type { Ms } from './fold.ts'

// Lots of the site: a ledger of entries, and what the fold over them gives. Volumes are whole millilitres and masses whole grams,
// so that the balance closes exactly.

/** Calendar date at the site, `2026-10-14`. Rest is counted in calendar days. */
export type DateText = string
export type LotId = string

export const layerNames = ['light-oil', 'vinegar', 'tar'] as const
export type LayerName = (typeof layerNames)[number]

export const colours = ['colourless', 'pale-yellow', 'yellow', 'pale-red-brown', 'red-brown', 'dark-brown', 'black'] as const
export type Colour = (typeof colours)[number]

export const clarities = ['clear', 'cloudy', 'floating'] as const
export type Clarity = (typeof clarities)[number]

/** Where the smoke was measured; published windows are stated at the mouth of the chimney. */
export const probePlaces = ['chimney-mouth', 'below-mouth', 'inside-flue', 'condenser-inlet'] as const
export type ProbePlace = (typeof probePlaces)[number]

export const lossReasons = ['spilled', 'evaporated', 'sample', 'filter', 'thrown-away'] as const
export type LossReason = (typeof lossReasons)[number]

export const vesselMaterials = ['glass', 'plastic', 'stainless', 'enamel', 'wood', 'galvanised', 'steel', 'drink-bottle'] as const
export type VesselMaterial = (typeof vesselMaterials)[number]

export interface Vessel {
  name: string
  material: VesselMaterial
  capacityMl: number
  /** Inside height up to the shoulder, for the drawing of the layers. */
  heightMm?: number
  place?: string
}

/** One bottle as it came from the condenser. */
export interface Bottle {
  number: number
  volumeMl: number
  from: Ms
  to: Ms
  /** Smoke while it filled; null where nobody could say. */
  smoke: { lowC: number; highC: number; by: 'probe' | 'estimate'; probeAt: ProbePlace | null } | null
}

export interface CheckValues {
  ph?: number
  /** g/mL as read; at the temperature of the liquid; hydrometerC where a hydrometer's own reference is printed on it. */
  density?: { gPerMl: number; atC: number; hydrometerC?: number }
  acidityPct?: number
  colour?: Colour
  clarity?: Clarity
  dissolvedTarPct?: number
}

export interface CharcoalValues {
  fixedCarbonPct?: number
  ashPct?: number
  moisturePct?: number
  over80Pct?: number
  over20Pct?: number
  under10Pct?: number
  bulkKgPerM3?: number
}

export type LotEvent =
  | {
      what: 'fill'
      lot: LotId
      firing: string | null
      bottles: Bottle[]
      vessel: Vessel
      wood?: string
      treatedWood?: boolean
      distilled?: boolean
      demo?: boolean
    }
  | { what: 'join'; lot: LotId; from: { lot: LotId; volumeMl: number }[]; vessel: Vessel }
  | { what: 'split'; lot: LotId; into: { lot: LotId; volumeMl: number; vessel: Vessel }[] }
  | { what: 'move'; lot: LotId; vessel: Vessel; lossMl: number }
  | { what: 'layers'; lot: LotId; lightOilMl: number; vinegarMl: number; tarMl: number }
  /** The middle goes to a new lot; oil and tar go to their own marked tins, out of the stock. */
  | { what: 'draw'; lot: LotId; layer: LayerName; volumeMl: number; lossMl: number; into?: { lot: LotId; vessel: Vessel } }
  | { what: 'loss'; lot: LotId; volumeMl: number; why: LossReason }
  | { what: 'use'; lot: LotId; volumeMl: number; use: string; waterMl: number; field?: string }
  | { what: 'give'; lot: LotId; volumeMl: number; to?: string }
  | { what: 'check'; lot: LotId; norm: NormId; values: CheckValues }
  | { what: 'charcoal'; lot: LotId; firing: string | null; massG: number; finesG: number; wood?: string; demo?: boolean }
  | { what: 'charcoal-check'; lot: LotId; values: CharcoalValues }
  /** Spread out in the open to air. */
  | { what: 'air'; lot: LotId }
  | { what: 'store'; lot: LotId; place: string; pileC?: number }
  | { what: 'charcoal-out'; lot: LotId; massG: number; to?: string }
  /** Takes the effect of the corrected entry away; the entry itself stays to be read. */
  | { what: 'void' }
export type LotEventName = LotEvent['what']

/** Nothing is erased: a correction is a later entry that names the one it stands for. */
export interface LotEntry {
  id: string
  /** When it was entered. */
  at: Ms
  /** When it was done, and on which calendar date at the site. */
  doneAt: Ms
  date: DateText
  by: string
  /** Whether the site's clock was confirmed when the entry was made. */
  clockSure: boolean
  event: LotEvent
  corrects?: string
}

export const normIds = ['council', 'council-distilled', 'producer', 'handbook', 'bamboo-refined'] as const
export type NormId = (typeof normIds)[number]

export const clauseNames = [
  'ph',
  'density',
  'acidity',
  'colour',
  'clarity',
  'dissolved-tar',
  'smoke-window',
  'rest',
  'raw-material',
  'vessel',
] as const
export type ClauseName = (typeof clauseNames)[number]

export type Verdict = 'pass' | 'fail' | 'not-measured'

export interface ClauseResult {
  clause: ClauseName
  verdict: Verdict
  measured: number | string | null
  /** At the norm's reference temperature where one applies. */
  corrected?: number
  low: number | null
  high: number | null
  wanted: string[]
  /** Why it is not measured or what failed, as a code. */
  because: string | null
  /** The clause of the norm, as its text names it. */
  source: string
}

export interface CheckResult {
  norm: NormId
  verdict: Verdict
  clauses: ClauseResult[]
  date: DateText | null
}

export type RestView =
  | { state: 'refused'; problem: EntryProblem }
  | {
      state: 'resting' | 'rested' | 'six-months'
      filled: DateText
      restedDays: number
      drawFrom: DateText
      sixMonths: DateText
    }

export interface CondensateLot {
  kind: 'condensate'
  id: LotId
  /** `crude` holds what came from the condenser; `drawn` is the middle layer, drawn off after its rest. */
  stage: 'crude' | 'drawn'
  firings: string[]
  parents: LotId[]
  /** The youngest fill date of all that is in it; null when the clock was not confirmed at filling. */
  filled: DateText | null
  drawn: DateText | null
  bottles: Bottle[]
  vessel: Vessel
  wood: string[]
  treatedWood: boolean
  distilled: boolean
  demo: boolean
  /** Left in it. */
  volumeMl: number
  /** What ever went in. */
  cameInMl: number
  /** Null until measured; their sum is then the volume. */
  layers: { lightOilMl: number; vinegarMl: number; tarMl: number; measured: DateText } | null
  /** The layers as they were last measured, before anything was drawn; a lot drawn from them keeps them. */
  measured: { lightOilMl: number; vinegarMl: number; tarMl: number } | null
  lastCheck: { norm: NormId; values: CheckValues; date: DateText } | null
  uses: { date: DateText; use: string; volumeMl: number; waterMl: number; field: string | null }[]
  entries: string[]
}

export interface CharcoalLot {
  kind: 'charcoal'
  id: LotId
  firings: string[]
  drawn: DateText
  drawnAt: Ms
  clockSure: boolean
  massG: number
  finesG: number
  leftG: number
  wood: string | null
  demo: boolean
  airedAt: Ms | null
  stored: { place: string; at: Ms; pileC: number | null } | null
  values: CharcoalValues | null
  entries: string[]
}
export type Lot = CondensateLot | CharcoalLot

/** Whole millilitres: in + gained = stock + tar + oil + used + given + lost, always. */
export interface Balance {
  inMl: number
  stockMl: number
  tarTinMl: number
  oilTinMl: number
  usedMl: number
  givenMl: number
  lostMl: number
  /** Layers measured more (or less, negative) than the book held. */
  measuredDifferenceMl: number
}

export interface Ledger {
  lots: Map<LotId, Lot>
  balance: Balance
}
