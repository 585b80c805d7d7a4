import type { Reason } from '../../../../server/contract/fold.ts'
import type { Measures } from './measures.ts'

/** The numbers of a reason in the person's units; empty where the fold gave none. */
export const told = {
  temperature: (reason: Reason, measures: Measures): string => (reason.value === undefined ? '' : measures.temperature(reason.value)),
  limit: (reason: Reason, measures: Measures): string => (reason.limit === undefined ? '' : measures.temperature(reason.limit)),
  kelvins: (reason: Reason, measures: Measures): string => (reason.value === undefined ? '' : measures.kelvins(reason.value)),
  number: (reason: Reason, measures: Measures, digits = 0): string =>
    reason.value === undefined ? '' : measures.number(reason.value, digits),
  most: (reason: Reason, measures: Measures): string => (reason.limit === undefined ? '' : measures.number(reason.limit)),
  percent: (reason: Reason, measures: Measures): string => (reason.value === undefined ? '' : measures.percent(reason.value)),
  /** How long it has held, whole minutes; 0 when not told. */
  minutes: (reason: Reason): number => (reason.forS === undefined ? 0 : Math.round(reason.forS / 60)),
}
