import type { NodeView } from '../../../../../server/contract/live.ts'

export interface NodeKey {
  node: string
  state: 'held' | 'paired'
  at: number
  fingerprint: string
}
export interface NodeRow {
  node: string
  key: NodeKey | null
}

/** Wire format: names of nodes. */
const nodeName = /^[a-z][a-z0-9-]{0,31}$/
export const isNodeName = (text: string): boolean => nodeName.test(text) && text !== 'server'

/** Nodes that were heard and nodes that have a secret; those that wait for the owner's word first. */
export function nodeRows(heard: readonly Pick<NodeView, 'node'>[], keys: readonly NodeKey[]): NodeRow[] {
  const names = new Set([...keys.map(({ node }) => node), ...heard.map(({ node }) => node.slice(node.indexOf('/') + 1))])
  const rank = ({ key }: NodeRow) => (key === null ? 1 : key.state === 'held' ? 0 : 2)
  return [...names]
    .sort()
    .map((node) => ({ node, key: keys.find((key) => key.node === node) ?? null }))
    .sort((a, b) => rank(a) - rank(b))
}
