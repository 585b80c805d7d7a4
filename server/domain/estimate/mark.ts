import type { KilnConfig } from '../../contract/fold.ts'
import type { Known } from '../../contract/learnt.ts'

// Where the wall of this very kiln stood when collecting had to stop. From kiln to kiln that differs by 81 K, since it hangs on where the
// probe sits; in one and the same kiln, whatever the charge, by 29 (64 firings of 16 kilns of another hand). It is learnt only from firings
// whose stop a smoke probe told: marks of the service's own calls with three probes, and of a drip seen dark, earned nothing.

/** How much it counts beside the common worth: a wall far over the mark forces a stop, one under it hardly holds one back. Chosen on ten kilns. */
const forces = 0.75
const holdsBack = 0.25
/** A logistic that lies over the normal distribution function within a hundredth (from memory). */
const probit = 1.702

/** What the mark adds to the common worth, in its units. @param hottestC of the wall so far */
export function markWorth(mark: Known | null, hottestC: number, worth: KilnConfig['worth']): number {
  if (mark === null) return 0
  const passed = 1 / (1 + Math.exp((-probit * (hottestC - mark.mean)) / mark.sd))
  const here = worth.good + (worth.tarry - worth.good) * passed
  return here * (here < 0 ? forces : holdsBack)
}
