// Bands of the phases. Smoke and wall never share a limit (trade facts 1.3): with the smoke at 75-80 the hot end is already above 275.

/** Smoke at the chimney's mouth, °C: where a phase begins. */
export const smokeBands = {
  drying: 45, // trade facts 1.2.1: weak and cold below 75; 9.3 M: white smoke from 40
  breakdown: 75, // trade facts 1.2.3, 1.3.2
  vinegar: 80, // trade facts 2.1; the kiln's own limit takes its place
  plateauTop: 87, // trade facts 8.15: the water leaving the cold end holds it at 75 to 87 for hours
  tar: 150, // trade facts 2.1; the kiln's own limit takes its place
  clearing: 260, // trade facts 1.2.10, 1.2.15: pale blue
  deadBandK: 4, // common practice, no source: falls back only when it is this much under
} as const

/** Drum wall, °C, used only where no smoke probe is heard. It leads the smoke, and its place shifts it by 200 K (trade facts 1.3). */
export const wallBands = {
  drying: 45, // common practice, no source
  breakdown: 100, // trade facts 1.1.1: no wood chars before its water is out
  vinegar: 120, // common practice, no source
  tar: 250, // on trials wall 70 to 240 was the best pair of fixed limits
  clearing: 300, // common practice, no source
  deadBandK: 8, // common practice, no source
} as const

/** How fast a drum and a clay kiln warm their smoke, K/h (trade facts 9.3, derived): dwells are scaled by it. */
export const drumRateKPerH = 40
