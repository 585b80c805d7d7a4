import { createHash, randomBytes, timingSafeEqual } from 'node:crypto'
import type { Store } from '../storage/store.ts'

export interface NodeKeyView {
  node: string
  /** `held`: it came with a secret that nobody confirmed yet. */
  state: 'held' | 'paired'
  at: number
  /** First six digits of the secret's SHA-256, to compare with what the node's maker sees. */
  fingerprint: string
}
interface KeptKey extends Omit<NodeKeyView, 'fingerprint'> {
  hash: string
  removed?: boolean
}

/** Decides for whom a connection speaks. */
export interface NodeGate {
  /** The node that it speaks for, null where that is open yet; or null where it may not come in at all. */
  judge(username: string, password: string): { node: string | null } | null
  /** True for a node that was paired: nobody speaks for it without its secret. */
  needsSecret(node: string): boolean
}

const kind = 'node-key'
const nodeName = /^[a-z][a-z0-9-]{0,31}$/
/** Shorter ones can be guessed; a secret of 128 bits has 22 letters or more. */
const shortestSecret = 16
const mostHeld = 50

const hashOf = (node: string, secret: string): string => createHash('sha256').update(`${node} ${secret}`).digest('hex')

/**
 * Secrets of nodes (reliability 6, S2 and S3): user name is the node's, password its secret. The first secret that a node shows is held until
 * the owner confirms it; a paired node is nobody else's. Until the owner lets in only paired nodes, one without a secret is welcome.
 */
export class NodeKeys implements NodeGate {
  private readonly store: Store
  private readonly now: () => number
  private readonly onlyPaired: () => boolean
  private readonly keys = new Map<string, KeptKey>()

  constructor(store: Store, now: () => number, onlyPaired: () => boolean) {
    this.store = store
    this.now = now
    this.onlyPaired = onlyPaired
  }

  async start(): Promise<void> {
    for (const { json } of await this.store.documents(kind)) {
      const key = JSON.parse(json) as KeptKey
      if (!key.removed) this.keys.set(key.node, key)
    }
  }

  judge(username: string, password: string): { node: string | null } | null {
    const open = this.onlyPaired() ? null : { node: null }
    if (!nodeName.test(username) || username === 'server' || password === '') return open
    const key = this.keys.get(username)
    const hash = hashOf(username, password)
    if (key?.state === 'paired') return timingSafeEqual(Buffer.from(key.hash), Buffer.from(hash)) ? { node: username } : null
    if (!key) this.hold(username, password, hash)
    return open && { node: username }
  }

  needsSecret(node: string): boolean {
    return this.keys.get(node)?.state === 'paired'
  }

  list(): NodeKeyView[] {
    return [...this.keys.values()].map(({ node, state, at, hash }) => ({ node, state, at, fingerprint: hash.slice(0, 6) }))
  }

  /** The secret that is held becomes the node's own. False where none is held. */
  async confirm(node: string): Promise<boolean> {
    const key = this.keys.get(node)
    if (!key) return false
    await this.keep({ ...key, state: 'paired', at: this.now() })
    return true
  }

  /** A new secret of 128 bits for a node, paired at once; it is shown this one time. */
  async make(node: string): Promise<string | null> {
    if (!nodeName.test(node) || node === 'server') return null
    const secret = randomBytes(16).toString('base64url')
    await this.keep({ node, state: 'paired', at: this.now(), hash: hashOf(node, secret) })
    return secret
  }

  async remove(node: string): Promise<boolean> {
    const key = this.keys.get(node)
    if (!key) return false
    await this.put({ ...key, removed: true })
    this.keys.delete(node)
    return true
  }

  /** In memory only: a stranger must not fill the disk with names. */
  private hold(node: string, secret: string, hash: string): void {
    const held = [...this.keys.values()].filter((key) => key.state === 'held').length
    if (secret.length < shortestSecret || held >= mostHeld) return
    this.keys.set(node, { node, state: 'held', at: this.now(), hash })
  }

  private async keep(key: KeptKey): Promise<void> {
    await this.put(key)
    this.keys.set(key.node, key)
  }

  private async put(key: KeptKey): Promise<void> {
    await this.store.putDocument({ kind, id: key.node, at: this.now(), by: 'owner', json: JSON.stringify(key) })
  }
}
