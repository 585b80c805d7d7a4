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
  /** A span that the fold gives in hours: minutes under one, hours and minutes over it. */
  span: (reason: Reason, minutes: (min: number) => string, hours: (h: number, min: number) => string): string => {
    const min = Math.round((reason.value ?? 0) * 60)
    return min < 60 ? minutes(min) : hours(Math.floor(min / 60), min % 60)
  },
}
