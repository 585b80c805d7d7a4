import { parsePayload } from '../senml/payload.ts'
import { packOfBare } from './bare.ts'
import { takeInfo, takeState } from './documents.ts'
import { freezeState, thawState } from './freeze.ts'
import { noOutcome, refuse } from './outcome.ts'
import type { Outcome } from './outcome.ts'
import { takePack } from './pack.ts'
import { releaseHeld } from './place.ts'
import { newNode, remark } from './state.ts'
import type { IntakeState, NodeMemory } from './state.ts'
import { readTopic } from './topic.ts'
import type { Topic } from './topic.ts'
import type { IntakeFold, Message } from './types.ts'
import { viewNodes } from './view.ts'

export type { IntakeState } from './state.ts'

const mostNodes = 64

/** From messages to samples, one fold per site (wire format; the state is changed in place). */
export const intakeFold: IntakeFold<IntakeState> = {
  version: 1,
  start: ({ root, site }) => ({ root, site, nodes: new Map(), clockSuspectTold: false }),
  step(state, message) {
    const outcome = noOutcome()
    takeMessage(state, message, outcome)
    for (const node of state.nodes.values()) releaseHeld(node, message.at, outcome)
    tellClocks(state, outcome)
    return { state, ...outcome }
  },
  view: viewNodes,
  freeze: freezeState,
  thaw: thawState,
}

function takeMessage(state: IntakeState, message: Message, outcome: Outcome): void {
  const topic = readTopic(message.topic, state.root, state.site)
  if (topic === null) return
  if (typeof topic === 'string') {
    outcome.refused.push({ node: null, reason: topic, record: null })
    return
  }
  if (topic.kind === 'cmd') return
  const node = nodeMemory(state, topic)
  if (node === null) {
    outcome.refused.push({ node: null, reason: 'too-many-nodes', record: null })
    return
  }
  // An empty retained payload takes a document back (MQTT 3.1.1, 3.3.1.3).
  if (message.payload.length === 0 && (topic.kind === 'state' || topic.kind === 'info')) return
  const parsed = parsePayload(message.payload)
  if (!parsed.ok) {
    refuse(outcome, node, parsed.reason, null)
    return
  }
  takeDocument(node, topic, parsed.value, message, outcome)
}

function takeDocument(node: NodeMemory, topic: Topic, document: unknown, message: Message, outcome: Outcome): void {
  const { at, payload, retained } = message
  if (topic.kind === 'state') takeState(node, document, at, retained, outcome)
  else if (topic.kind === 'info') takeInfo(node, document, at, retained, outcome)
  else if (topic.kind === 'ack') node.lastHeardMs = at
  // Played from a broker's store: not a new sample (wire format, rule 6).
  else if (retained) remark(node, 'retained-reading')
  else if (Array.isArray(document)) takePack(node, document, { atMs: at, live: topic.kind === 'readings', payload }, outcome)
  else if (topic.kind === 'readings' && isObject(document)) {
    takePack(node, packOfBare(document), { atMs: at, live: true, payload }, outcome)
  } else refuse(outcome, node, 'not-a-pack', null)
}

const isObject = (item: unknown): item is Record<string, unknown> => typeof item === 'object' && item !== null && !Array.isArray(item)

function nodeMemory(state: IntakeState, { site, node }: Topic): NodeMemory | null {
  const known = state.nodes.get(node)
  if (known !== undefined) return known
  if (state.nodes.size >= mostNodes) return null
  const fresh = newNode(`${site}/${node}`)
  state.nodes.set(node, fresh)
  return fresh
}

/** Once, as it turns: some node's clock is suspect, or none any more. */
function tellClocks(state: IntakeState, outcome: Outcome): void {
  let suspect = false
  for (const { trust } of state.nodes.values()) suspect ||= trust.suspect
  if (suspect === state.clockSuspectTold) return
  state.clockSuspectTold = suspect
  outcome.inputs.push({ kind: 'health', code: 'clock-suspect', on: suspect })
}
