import type { Input, Ms, NodeId } from '../../contract/fold.ts'
import type { NodeView } from '../../contract/live.ts'
import type { RefusalReason } from '../../contract/vocabulary.ts'

/** One MQTT message, or one line of a recording, as it arrived. `seq` grows by one for every journalled entry of the site. */
export interface Message {
  seq: number
  at: Ms
  topic: string
  payload: Uint8Array
  retained: boolean
}

/** An input of the kiln fold without the numbers of its journal entry, which the driver adds. */
type Numberless<I> = I extends Input ? Omit<I, 'seq' | 'at'> : never
export type KilnInput = Numberless<Extract<Input, { kind: 'sample' | 'channel' | 'node' | 'health' }>>

export interface IntakeResult<S> {
  state: S
  /** For the kiln folds, in order; a channel that has no role anywhere is delivered too. */
  inputs: readonly KilnInput[]
  /** Whole messages or single records that were turned away: counted, shown, kept in quarantine, never fatal. */
  refused: readonly Refusal[]
  /** What to say to a node, e.g. `{ node: 'yard/n1', do: 'rebirth', why: 'conflicts' }`. */
  commands: readonly { node: NodeId; do: 'rebirth'; why: string }[]
}

export interface Refusal {
  node: NodeId | null
  reason: RefusalReason
  /** Index of the record in its pack; null where the whole message is meant. */
  record: number | null
}

export interface IntakeFold<S> {
  version: number
  /** @param site expected second topic level after the version; @param root first topic level. */
  start(setup: { root: string; site: string }): S
  /** Pure; may reuse the memory of `state`. */
  step(state: S, message: Message): IntakeResult<S>
  /** What the page shows of the nodes. */
  view(state: S): NodeView[]
  freeze(state: S): Uint8Array
  thaw(bytes: Uint8Array): S
}
