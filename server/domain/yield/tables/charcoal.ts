/**
 * Charcoal against its end temperature, slow charring of wood. `yieldPct` of oven-dry wood, `fixedCarbonPct` and `volatilePct` of the charcoal,
 * `liquidPct` and `gasPct` of oven-dry wood, `ignitionC` in air. Study of the self-heating of charcoal, MDPI 2025 (four measured rows).
 */
export const charcoalByEndTemperature = [
  { endC: 350, yieldPct: 36.26, fixedCarbonPct: 64.57, volatilePct: 35.3, liquidPct: 44.24, gasPct: 19.5, ignitionC: 273 },
  { endC: 450, yieldPct: 30.02, fixedCarbonPct: 76.07, volatilePct: 23.66, liquidPct: 45.86, gasPct: 24.12, ignitionC: 289 },
  { endC: 550, yieldPct: 27.19, fixedCarbonPct: 85.78, volatilePct: 13.83, liquidPct: 46.79, gasPct: 26.01, ignitionC: 337 },
  { endC: 650, yieldPct: 24.85, fixedCarbonPct: 93.36, volatilePct: 6.32, liquidPct: 45.52, gasPct: 29.63, ignitionC: 424 },
] as const

/** FAO's list of the same kind, as quoted by Miles 2006; higher yields, so the upper end of the range. */
export const charcoalByEndTemperatureFao = [
  { endC: 300, yieldPct: 40, fixedCarbonPct: 68 },
  { endC: 500, yieldPct: 33, fixedCarbonPct: 86 },
  { endC: 700, yieldPct: 30, fixedCarbonPct: 93 },
] as const

/** Lowest share of the dry wood that drum kilns gave: 9.90 to 21.18 % (double-drum kiln, J. Penelitian Hasil Hutan 2011). */
export const poorDrumYieldPct = 9.9
