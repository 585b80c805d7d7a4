import type { Curve } from '../../../../server/contract/live.ts'
import type { Words } from '../../words/en.ts'

type Mark = Curve['marks'][number]

/** Turns, work and alarms; that an alarm was hushed or went by itself stands in the log. */
export function isTold({ kind, state }: Mark): boolean {
  return kind === 'act' || (kind === 'call' ? state === 'due' : state === 'unacknowledged')
}

/** A mark of the curve in words; a code that this page does not know yet is shown as it is. */
export function markText({ kind, code }: Mark, words: Words): string {
  const known: Partial<Record<string, string>> =
    kind === 'act'
      ? words.acts
      : kind === 'call'
        ? words.calls
        : { [code]: (words.alarms as Partial<Record<string, { name: string }>>)[code]?.name }
  return known[code] ?? code.replaceAll('-', ' ')
}
