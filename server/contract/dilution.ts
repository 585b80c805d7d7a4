import type { LotId } from './lots.ts'

/** `parts`: 1 part of vinegar to so many parts of water. `fold`: the finished mixture is so many times the vinegar. */
export type Ratio = { convention: 'parts'; water: number } | { convention: 'fold'; fold: number }

export const useIds = [
  'leaves-young',
  'leaves-grown',
  'flower-fruit',
  'plant-base',
  'seedling-trays',
  'potted-orchids',
  'seed-soak',
  'soil-before-planting',
  'bare-ground',
  'compost',
  'pen-smell',
  'feed',
] as const
export type UseId = (typeof useIds)[number]

/** What the mixture touches; decides which limits hold. */
export type Touches = 'living-plants' | 'seed' | 'bare-soil' | 'compost' | 'pens' | 'animals'

export interface Rate {
  id: string
  use: UseId
  crop: string | null
  /** As published, with its own convention. `from` is the stronger end. */
  convention: 'parts' | 'fold'
  from: number
  to: number
  /** Days between, where published. */
  everyDays: [number, number] | null
  litresPerM2: number | null
  /** Days to wait before planting, where published. */
  beforePlantingDays: [number, number] | null
  kind: 'published' | 'common-practice'
  /** Author, title, year as far as known. */
  source: string
  sureness: 'high' | 'middle' | 'low'
  /** False: in the table so that it can be refused with its reason. */
  offered: boolean
}

export const cautionCodes = [
  'stronger-than-500',
  'test-patch',
  'mask',
  'gloves-goggles',
  'not-with-alkalis',
  'away-from-fish',
  'five-days-between',
  'wait-before-planting',
  'repeated-stronger-than-1000',
  'no-claim',
  'local-law',
] as const
export type CautionCode = (typeof cautionCodes)[number]

export interface Mixture {
  use: UseId
  touches: Touches
  parts: number
  fold: number
  vinegarMl: number
  waterMl: number
  totalMl: number
  cautions: CautionCode[]
  /** Published rates that name this strength for this use; none when the person chose another. */
  rates: Rate[]
}

export interface SprayerCard {
  lot: LotId
  mixture: Mixture
  date: string
  /** Not again on the same plants before this date; null where nothing grows. */
  notAgainBefore: string | null
  leftMl: number
  /** How many more such tanks the lot holds. */
  tanksLeft: number
}
