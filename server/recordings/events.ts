import type { KilnId, Ms, Output } from '../contract/fold.ts'

/** A line of `replay --json` (wire format, "Recording file"); times in ISO 8601 UTC. */
export type EventLine = { at: string; event: string } & Record<string, unknown>

const iso = (at: Ms): string => new Date(at).toISOString()
const rounded = (value: number, digits: number): number => Number(value.toFixed(digits))

/** The line of an output; null for what is no news to a reader of recordings: the operator's own doing. */
export function eventOf(kiln: KilnId, output: Output): EventLine | null {
  const at = iso(output.at)
  switch (output.kind) {
    case 'phase':
      return { at, event: 'phase', phase: output.phase, because: output.because }
    case 'call':
      return output.state === 'done' ? null : { at, event: 'call', call: output.call, state: output.state, because: output.because }
    case 'alarm': {
      const { alarm, channel, state, priority, because } = output
      return { at, event: 'alarm', kiln, alarm, ...(channel === undefined ? {} : { channel }), state, priority, because }
    }
    case 'lesson': // it is for the next firing
      return null
    case 'hint':
      return { at, event: 'hint', hint: output.hint, by: iso(output.by), because: output.because }
    case 'forecast': {
      const { call, earliest, likely, latest } = output
      return { at, event: 'forecast', call, earliest: iso(earliest), likely: iso(likely), latest: iso(latest) }
    }
    case 'estimate': {
      const { smokeC, smokeSd, tarShare, acidShare } = output.estimate
      return {
        at,
        event: 'estimate',
        smokeC: rounded(smokeC, 1),
        smokeSd: rounded(smokeSd, 1),
        tarShare: rounded(tarShare, 3),
        acidShare: rounded(acidShare, 3),
      }
    }
  }
}

export function endOf(at: Ms, readings: number, refused: Record<string, number>): EventLine {
  return { at: iso(at), event: 'end', readings, refused }
}
