/** What went in and out of a bed since the start: kg and kJ. The balance of both is checked by a test. */
export interface Ledger {
  gasInKg: number
  gasOutKg: number
  gasInKJ: number
  gasOutKJ: number
  /** Radiated from the small fire on the front. */
  fireKJ: number
  /** Set free by breakdown and by burning inside. */
  reactionKJ: number
  /** Given to the open air by the cover. */
  lostKJ: number
}

export function emptyLedger(): Ledger {
  return { gasInKg: 0, gasOutKg: 0, gasInKJ: 0, gasOutKJ: 0, fireKJ: 0, reactionKJ: 0, lostKJ: 0 }
}
