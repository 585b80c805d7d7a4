import type { Ms } from '../../contract/fold.ts'
import { tellBirth } from './announce.ts'
import { isBoot, readBirth } from './birth.ts'
import { refuse } from './outcome.ts'
import type { Outcome } from './outcome.ts'
import type { NodeMemory } from './state.ts'

const states = ['init', 'ready', 'sleeping', 'disconnected', 'lost'] as const

/** `state`: what a node says of itself, or its will says of it. */
export function takeState(node: NodeMemory, document: unknown, atMs: Ms, retained: boolean, outcome: Outcome): void {
  const { s, boot } = typeof document === 'object' && document !== null ? (document as { s?: unknown; boot?: unknown }) : {}
  const said = states.find((known) => known === s)
  if (said === undefined || (boot !== undefined && !isBoot(boot))) {
    refuse(outcome, node, 'bad-state', null)
    return
  }
  const gone = said === 'lost' || said === 'disconnected'
  // The will of an earlier connection comes after the new one stands: its boot number tells.
  if (gone && boot !== undefined && node.boot !== null && boot !== node.boot) return
  node.said = said
  if (!retained && !gone) node.lastHeardMs = atMs
  const is = gone ? 'lost' : said === 'sleeping' ? node.told : 'up'
  if (is === null || is === node.told) return
  node.told = is
  outcome.inputs.push({ kind: 'node', node: node.node, is })
}

/** `info`: the birth document. */
export function takeInfo(node: NodeMemory, document: unknown, atMs: Ms, retained: boolean, outcome: Outcome): void {
  const read = readBirth(document)
  if (!read.ok) {
    refuse(outcome, node, read.reason, null)
    return
  }
  for (const { record, reason } of read.problems) refuse(outcome, node, reason, record)
  node.birth = read.birth
  if (!retained) node.lastHeardMs = atMs
  tellBirth(node, outcome)
}
