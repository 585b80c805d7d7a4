import type { Ms } from '../../../../server/contract/fold.ts'
import type { KilnView } from '../../../../server/contract/live.ts'

const hour = 3_600_000

/** From lighting to a little beyond what is foreseen, so that the names at the line ends and the fan have room. */
export function liveWindow(kiln: KilnView, from: Ms, now: Ms): { from: Ms; to: Ms } {
  const span = Math.max(hour, now - from)
  const foreseen = Math.max(
    now,
    kiln.forecast?.smoke.at(-1)?.t ?? now,
    kiln.command.next?.range.latest ?? now,
    ...kiln.calls.map((call) => (call.call === 'open' ? now : (call.forecast?.likely ?? now))),
  )
  // a forecast far away must not squeeze what has been into a corner
  const to = Math.max(now + span * 0.3, Math.min(foreseen, now + Math.max(span * 1.5, 4 * hour)))
  return { from, to }
}
