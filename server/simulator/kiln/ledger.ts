/** What went in and out of a bed since the start: kg and kJ. The balance of both is checked by a test. */
export interface Ledger {
  gasInKg: number
  gasOutKg: number
  gasInKJ: number
  gasOutKJ: number
  /** Radiated from the small fire on the front. */
  fireKJ: number
  /** Set free by breakdown, as measured (with its own steam as steam). */
  breakdownKJ: number
  /** Bound in the steam of breakdown, beside the measured heat. */
  steamMadeKJ: number
  /** Set free by charcoal that burns inside. */
  burntKJ: number
  /** Given to the open air by the cover. */
  lostKJ: number
}

export function emptyLedger(): Ledger {
  return { gasInKg: 0, gasOutKg: 0, gasInKJ: 0, gasOutKJ: 0, fireKJ: 0, breakdownKJ: 0, steamMadeKJ: 0, burntKJ: 0, lostKJ: 0 }
}

/** Everything that came in less everything that left, kJ. */
export function heatLeft(l: Ledger): number {
  return l.gasInKJ + l.fireKJ + l.breakdownKJ + l.steamMadeKJ + l.burntKJ - l.gasOutKJ - l.lostKJ
}
