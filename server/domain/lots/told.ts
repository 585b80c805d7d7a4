import type { Act } from '../../contract/actions.ts'
import type { Ms, Output } from '../../contract/fold.ts'
import type { FiringTold, PhaseSpan } from '../../contract/live.ts'
import { collectedFrom, latestWords } from './collected.ts'

/**
 * What a firing came to, for whoever looks along the shelf.
 * @param acts in any order; corrected ones count as their correction says
 * @param outputs of which only the alarms are read
 * @param ended where the log stops
 */
export function toldOf(acts: readonly Act[], outputs: readonly Output[], phases: readonly PhaseSpan[], ended: Ms): FiringTold {
  const { bottles, charcoalG } = collectedFrom(acts, null, ended)
  const measured = bottles.flatMap(({ volumeMl }) => (volumeMl === null ? [] : [volumeMl]))
  const sounded = outputs.flatMap((output) =>
    output.kind === 'alarm' && output.state === 'unacknowledged' && output.priority !== 'notice' ? [output.alarm] : [],
  )
  return {
    bottles: bottles.length,
    litres: measured.length === 0 ? null : measured.reduce((sum, ml) => sum + ml, 0) / 1000,
    charcoalKg: charcoalG === null ? null : charcoalG / 1000,
    end: endOf(acts, phases),
    alarms: [...new Set(sounded)],
  }
}

function endOf(acts: readonly Act[], phases: readonly PhaseSpan[]): FiringTold['end'] {
  const done = latestWords(acts).map(({ act }) => act.action)
  if (done.includes('unload')) return 'unloaded'
  if (done.includes('open')) return 'opened'
  if (done.includes('seal')) return 'sealed'
  return phases.at(-1)?.phase === 'failed' ? 'died' : 'left'
}
