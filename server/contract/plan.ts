import type { DateText, LotId } from './lots.ts'

/** A range that is meant to hold four times out of five, with its middle. */
export interface Range {
  low: number
  likely: number
  high: number
}

export const condenserKinds = ['air-pipe', 'wet-cloths', 'water-jacket'] as const
export type CondenserKind = (typeof condenserKinds)[number]

export interface ChargeExpectation {
  asLoadedKg: number
  dryKg: number
  waterKg: number
  moistureWetPct: number
  moistureDryPct: number
  charcoalKg: Range
  fixedCarbonPct: number
  /** Crude condensate worth collecting, without the first water. */
  crudeL: Range
  /** After the rest, the middle layer. */
  vinegarL: Range
  cooling: { heatMj: Range; meanKw: number; waterL: Range; clothL: Range; riseK: number; hours: number }
  bottles: { count: number; sizeL: number; marked: number }
}

export interface LightBy {
  date: DateText
  /** Minutes after local midnight. */
  sunsetMin: number
  darkMin: number
  sealByMin: number
  lightByMin: number
  hoursToSeal: Range
  from: 'own-record' | 'published'
  firings: number
}

export interface PlanBack {
  wantedMl: number
  by: DateText
  fromStockMl: number
  fromResting: { lot: LotId; readyOn: DateText; expectedMl: number }[]
  shortMl: number
  firings: { least: number; likely: number; most: number }
  woodKg: number
  /** Null where nothing is short. */
  lastFiringOn: DateText | null
  firstFiringOn: DateText | null
  gatherBy: DateText | null
}

export const checkCodes = [
  'wood-known',
  'wood-not-treated',
  'wood-not-painted',
  'no-galvanised',
  'no-asbestos-cement',
  'no-chemical-drum',
  'drum-cold',
  'drum-sound',
  'pipe-free',
  'far-from-dwellings',
  'nobody-sleeps-beside',
  'clay-ready',
  'water-ready',
  'bottles-marked',
  'no-drink-bottles',
  'gloves-goggles',
  'helper-knows',
  'sound-heard',
] as const
export type CheckCode = (typeof checkCodes)[number]
