export interface Verdict {
  verdict: 'take' | 'quarantine' | 'close'
  reason: string
  /** Whom the connection speaks for from now on. */
  node: string | null
  /** Whether the broker may keep it for those who come later. */
  keep: boolean
}

/** What a client may do. `close` is for what no honest node does; `quarantine` acknowledges and keeps what can not be used. */
export interface Policy {
  publish(
    topic: string,
    node: string | null,
  ): { verdict: 'take' | 'quarantine' | 'close'; reason: string; node: string | null; keep: boolean }
  subscribe(filter: string, node: string | null): boolean
}

/** Kinds of the contract that a node sends, and whether the broker keeps the last one for those who come later. */
const kinds = new Map([
  ['state', true],
  ['info', true],
  ['readings', false],
  ['backlog', false],
  ['ack', false],
])
const nodeName = /^[a-z][a-z0-9-]{0,31}$/
const topicBytes = 256

/** Topics of one site (wire format, contract version 1). A connection belongs to the first node that it speaks for. */
export function sitePolicy(root: string, site: string): Policy {
  const base = `${root}/1/${site}/`
  return {
    publish(topic, node) {
      const verdict = (verdict: 'take' | 'quarantine' | 'close', reason: string, keep = false) => ({ verdict, reason, keep, node })
      if (topic.length > topicBytes || topic.startsWith('$') || topic.startsWith('/') || topic.endsWith('/') || topic.includes('//'))
        return verdict('close', 'bad-topic')
      if (!topic.startsWith(base)) return verdict('quarantine', 'foreign-topic')
      const [name = '', kind = '', ...more] = topic.slice(base.length).split('/')
      if (name === 'server') return verdict('close', 'not-the-server')
      if (!nodeName.test(name)) return verdict('quarantine', 'bad-node-name')
      if (node !== null && node !== name) return verdict('close', 'not-your-topic')
      const keep = kinds.get(kind)
      if (keep === undefined || more.length > 0) return { verdict: 'quarantine', reason: 'unknown-kind', keep: false, node: name }
      return { verdict: 'take', reason: '', keep, node: name }
    },
    subscribe(filter, node) {
      const rest = filter.startsWith(base) ? filter.slice(base.length).split('/') : []
      const [name = '', kind = ''] = rest
      if (name === 'server') return true
      return kind === 'cmd' && rest.length === 2 && nodeName.test(name) && (node === null || node === name)
    },
  }
}
