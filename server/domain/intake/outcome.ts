import type { NodeId } from '../../contract/fold.ts'
import type { RefusalReason } from '../../contract/vocabulary.ts'
import type { NodeMemory } from './state.ts'
import type { KilnInput, Refusal } from './types.ts'

/** What one message leads to, gathered on the way. */
export interface Outcome {
  inputs: KilnInput[]
  refused: Refusal[]
  commands: { node: NodeId; do: 'rebirth'; why: string }[]
}

export const noOutcome = (): Outcome => ({ inputs: [], refused: [], commands: [] })

/** @param record null where the whole message is meant */
export function refuse(outcome: Outcome, node: NodeMemory, reason: RefusalReason, record: number | null): void {
  outcome.refused.push({ node: node.node, reason, record })
  node.refused[reason] = (node.refused[reason] ?? 0) + 1
}
