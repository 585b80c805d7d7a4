import type { Ledger } from './ledger.ts'
import type { Stream } from './steam.ts'

/** What the open air does to the cover during a step; `wetting` multiplies what its surface gives away. */
export interface Weathering {
  airC: number
  wetting: number
}

/** A charge in its drum under earth, whatever stands inside the model. `place` runs from 0 at the mouth to 1 at the chimney. */
export interface Bed {
  readonly ledger: Ledger
  /** Carries the stream from the mouth to the foot of the chimney, changing it in place. */
  step(dtS: number, gas: Stream, fireC: number, weather: Weathering): void
  wallC(place: number): number
  skinC(place: number): number
  coreC(): number
  hottestC(): number
  /** 0 raw .. 1 charred: mean of the charge, and its last part. */
  charred(): { mean: number; least: number }
  solids(): { woodKg: number; charKg: number; waterKg: number; heldKg: number }
  storedKJ(): number
}
