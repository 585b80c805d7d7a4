import type { Fold, Ms } from '../../contract/fold.ts'
import type { KilnView } from '../../contract/live.ts'

/** The kiln fold as the runtime drives it: the fold, and what a page shows of its state. */
export interface KilnFold<S> extends Fold<S> {
  view(state: S, at: Ms): KilnView
}
