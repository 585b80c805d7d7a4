import type { Reason } from '../../../../server/contract/fold.ts'
import type { Measures } from './measures.ts'

export interface AlarmWords {
  /** For lists and the log. */
  name: string
  /** What to do first. */
  first: string
  /** Why, second. */
  why: string
}

/** One reason of the fold as a short sentence without its full stop; `where` is the name of its channel, if it has one. */
export type ReasonWords = (reason: Reason, measures: Measures, where: string) => string
