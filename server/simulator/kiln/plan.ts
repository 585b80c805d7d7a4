import type { YieldCurves } from './yields.ts'

/** Everything about one charge, drum and cover that chance decides before the fire is lit. */
export interface CoverPlan {
  layersM: readonly number[]
  /** Trade facts 9.2.12: 0.24 dry sand .. 2.1 wet. */
  earthWmK: number
  /** Trade facts 9.2.12: 1280 .. 3100. */
  earthKJm3K: number
}

export interface ChargePlan {
  dryKg: number
  /** kg water per kg dry wood. */
  moistureDb: number
  pieceM: number
  /** Cellulose, hemicellulose, lignin; sums to 1. */
  shares: readonly [number, number, number]
  startC: number
}

export interface BedPlan {
  charge: ChargePlan
  cover: CoverPlan
  earthStartC: number
  /** Heat transfer between gas and all the pieces, kW/K. */
  gasToWoodKWK: number
  /** Between pieces and wall, W/(m² K). */
  woodToWallWm2K: number
  /** Between gas and wall, W/(m² K). */
  gasToWallWm2K: number
  /** Along the drum between neighbouring slices of a drum cut in twelve, kW/K. */
  alongKWK: number
  /** From the small fire on the front slice, kW/K. */
  fireToFrontKWK: number
  /** Heat of char forming and of volatiles forming, kJ/kg of each (trade facts 1.1.16). */
  charHeat: number
  volatileHeat: number
  /** Of the tar mist that should settle, the share that a twelfth of the drum holds back. */
  mistHeld: number
  /** Shifts the dew point of tar, K. */
  tarDewShiftK: number
  /** Acids over wet wood against acids in its water (dilute acetic acid, about 0.7: from memory). */
  acidVolatility: number
  acidExchange: number
  /** Share of deposited tar that chars instead of leaving when it is heated again. */
  tarToChar: number
  /** Share of the gas that passes over the charge instead of through it. */
  bypass: number
  yields: YieldCurves
  /** Where much air comes in: embers take no more than keeps them at this, °C, and the rest goes on to the next slice. */
  embersC: number | null
}
