import type { ChannelId, Ms, NodeId } from '../../contract/fold.ts'
import type { Phase } from '../../contract/vocabulary.ts'
import type { CallStates } from '../calls/state.ts'
import type { Share } from '../condenser/loss.ts'
import type { CondenserWatch } from '../condenser/watch.ts'
import type { Cooling } from '../cooling/state.ts'
import type { Channel } from '../firing/channel.ts'
import type { Look } from '../firing/look.ts'
import type { AlarmBoard, Telling } from './board.ts'

/** Everything that a rule may look at. */
export interface Scene {
  look: Look
  phase: Phase
  phaseSince: Ms
  calls: CallStates
  cooling: Cooling | null
  /** The model of the kiln says that air is getting in. */
  modelLeak: boolean
  condenser: CondenserWatch
  /** Vapour that comes now, as a range, L/h of condensate. */
  flowLPerH: Share
  fire: FireWatch
  board: AlarmBoard
  channels: Record<ChannelId, Channel>
  lostNodes: Record<NodeId, Ms>
  /** Somebody tends the kiln: from loading to unloading. */
  tended: boolean
}

/** What this fire usually is. */
export interface FireWatch {
  /** Upper quartile of the last three hours, °C: a fire that is dying already pulls less at it than at the median. */
  usualC: number | null
  /** Burnt above its low mark for a while: before that it is being lit. */
  established: boolean
  /** Minutes between feedings, median; null before the third. */
  habitMin: number | null
}

export type Tell = (telling: Telling) => void
