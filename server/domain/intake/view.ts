import type { NodeView } from '../../contract/live.ts'
import type { IntakeState, NodeMemory } from './state.ts'

/** What the page shows of the nodes, in order of first hearing. */
export function viewNodes(state: IntakeState): NodeView[] {
  return [...state.nodes.values()].map((node) => ({
    node: node.node,
    state: node.said,
    lastHeard: node.lastHeardMs,
    boot: node.boot ?? node.birth?.boot ?? null,
    clock: clockOf(node),
    hardware: node.birth?.hardware ?? '',
    channels: [...node.channels].filter(([, { told }]) => told).map(([name]) => `${node.node}/${name}`),
    samples: node.samples,
    duplicates: node.duplicates,
    conflicts: node.conflicts,
    refused: { ...node.refused },
    remarks: [...node.remarks],
  }))
}

function clockOf({ trust, birth }: NodeMemory): NodeView['clock'] {
  return trust.suspect ? 'suspect' : (birth?.clock ?? 'unknown')
}
