import type { Ms } from '../../../../server/contract/fold.ts'
import type { Measures } from '../../lib/words/measures.ts'

/** `14:30`, and the day before it where it is not the day on which the firing began. */
export function dayClock(at: Ms, begin: Ms, measures: Measures): string {
  return measures.sameDay(at, begin) ? measures.clock(at) : `${measures.date(at)} ${measures.clock(at)}`
}
