/** `{root}/1/{site}/{node}/{kind}`, taken apart. */
export interface Topic {
  site: string
  node: string
  kind: TopicKind
}
const kinds = ['state', 'info', 'readings', 'backlog', 'ack', 'cmd'] as const
export type TopicKind = (typeof kinds)[number]
export type TopicProblem = 'bad-topic' | 'other-site' | 'unknown-contract' | 'unknown-kind'

const levelName = /^[a-z][a-z0-9-]{0,31}$/
const contractVersion = '1'
/** The service's own name among the nodes. */
export const ownNode = 'server'

/** Null for what the service itself says, which is no reading. */
export function readTopic(topic: string, root: string, site: string): Topic | TopicProblem | null {
  const levels = topic.length > 256 ? [] : topic.split('/')
  const [first, version, siteLevel, node, kindLevel] = levels
  if (first !== root || version === undefined || siteLevel === undefined || node === undefined || kindLevel === undefined)
    return 'bad-topic'
  if (version !== contractVersion) return 'unknown-contract'
  if (!levelName.test(siteLevel) || !levelName.test(node)) return 'bad-topic'
  if (siteLevel !== site) return 'other-site'
  if (node === ownNode) return null
  if (levels.length !== 5) return 'bad-topic'
  const kind = kinds.find((known) => known === kindLevel)
  return kind === undefined ? 'unknown-kind' : { site: siteLevel, node, kind }
}
