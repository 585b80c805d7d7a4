import type { Ms } from '../../../../server/contract/fold.ts'
import type { KilnView, PhaseSpan } from '../../../../server/contract/live.ts'
import type { Call, Phase } from '../../../../server/contract/vocabulary.ts'

export interface RibbonPart {
  phase: Phase
  from: Ms
  to: Ms
  coming: boolean
}

export function knownParts(spans: readonly PhaseSpan[], end: Ms): RibbonPart[] {
  return spans
    .filter((span) => span.phase !== 'idle')
    .map((span) => ({ phase: span.phase, from: span.from, to: span.to ?? end, coming: false }))
}

/** What the forecast says will follow: vinegar run from start to stop, tar run to sealing, then cooling. */
export function comingParts(kiln: KilnView, now: Ms, end: Ms): RibbonPart[] {
  const likely = (call: Call): Ms | null =>
    (kiln.command.next?.call === call ? kiln.command.next.range.likely : kiln.calls.find((one) => one.call === call)?.forecast?.likely) ??
    null
  const turns: { at: Ms; phase: Phase }[] = []
  const add = (call: Call, phase: Phase): void => {
    const at = likely(call)
    if (at !== null && at > now && !kiln.calls.some((one) => one.call === call && one.state === 'done')) turns.push({ at, phase })
  }
  add('start-collecting', 'vinegar')
  add('stop-collecting', 'tar')
  add('seal', 'cooling')
  turns.sort((a, b) => a.at - b.at)
  const first = turns[0]
  const phase = kiln.firing.ribbon.at(-1)?.phase
  // what goes on now goes on until the next turn
  if (first && phase && phase !== 'idle') turns.unshift({ at: now, phase })
  return turns
    .map((turn, index) => ({ phase: turn.phase, from: turn.at, to: turns[index + 1]?.at ?? end, coming: true }))
    .filter((part) => part.to > part.from)
}
