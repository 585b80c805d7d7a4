export interface Verdict {
  verdict: 'take' | 'quarantine' | 'close'
  reason: string
  /** Whom the connection speaks for from now on. */
  node: string | null
  /** Whether other clients may hear it, at once or as retained. */
  share: boolean
}

/** What a client may do. `close` is for what no honest node does; `quarantine` acknowledges and keeps what can not be used. */
export interface Policy {
  publish(topic: string, node: string | null): Verdict
  subscribe(filter: string, node: string | null): boolean
}

/** Kinds of the contract that a node sends, and whether it is shared with other clients. */
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
  /** Why a topic that does not begin as it should was not understood, in the words of the intake where it has them. */
  const strayReason = (topic: string): string => {
    const [first, version, place] = topic.split('/')
    if (first !== root) return 'foreign-topic'
    if (version !== '1') return 'unknown-contract'
    return place === site ? 'unknown-kind' : 'other-site'
  }
  return {
    publish(topic, node) {
      const verdict = (verdict: 'take' | 'quarantine' | 'close', reason: string) => ({ verdict, reason, share: false, node })
      if (topic.length > topicBytes || topic.startsWith('$') || topic.startsWith('/') || topic.endsWith('/') || topic.includes('//'))
        return verdict('close', 'bad-topic')
      if (!topic.startsWith(base)) return verdict('quarantine', strayReason(topic))
      const [name = '', kind = '', ...more] = topic.slice(base.length).split('/')
      if (name === 'server') return verdict('close', 'not-the-server')
      if (!nodeName.test(name)) return verdict('quarantine', 'bad-node-name')
      if (node !== null && node !== name) return verdict('close', 'not-your-topic')
      const share = kinds.get(kind)
      if (share === undefined || more.length > 0) return { verdict: 'quarantine', reason: 'unknown-kind', share: false, node: name }
      return { verdict: 'take', reason: '', share, node: name }
    },
    subscribe(filter, node) {
      const rest = filter.startsWith(base) ? filter.slice(base.length).split('/') : []
      const [name = '', kind = ''] = rest
      if (name === 'server') return true
      return kind === 'cmd' && rest.length === 2 && nodeName.test(name) && (node === null || node === name)
    },
  }
}
