import { createHash, randomBytes, randomUUID, timingSafeEqual } from 'node:crypto'
import type { Person } from '../contract/routes.ts'
import type { Store } from '../storage/store.ts'
import { Problem } from './problem.ts'
import { Register } from './register.ts'

export interface Device {
  id: string
  person: Exclude<Person, 'anyone'>
  label: string
  pairedAt: number
  /** Of this start of the service and before, to the hour. */
  usedAt?: number
}
interface KeptDevice extends Device {
  hash: string
  removed?: boolean
}

/** An invitation by code or QR link is good once and for a quarter of an hour (reliability 6, S1). */
const inviteForMs = 15 * 60_000
const mostTries = 10
const triesWithinMs = 60_000
const kind = 'device'
const dayMs = 24 * 3_600_000
/** A browser that nobody used for so long is paired anew: an owner's sooner, because it may do more (reliability 6, S9). */
const idleMs = { viewer: 90 * dayMs, operator: 90 * dayMs, owner: 30 * dayMs } as const
/** As long as browsers keep a cookie. */
const longestMs = 400 * dayMs
const noteUseEveryMs = 3_600_000
/** Addresses whose wrong tries are remembered; a sender with more of them has the whole network. */
const mostAddresses = 1000

const hashOf = (secret: string): string => createHash('sha256').update(secret).digest('hex')
const newSecret = (): string => randomBytes(32).toString('base64url')

/** Which browsers may do what. Only hashes of their secrets are kept. */
export class People {
  readonly register: Register
  private readonly store: Store
  private readonly now: () => number
  private readonly devices = new Map<string, KeptDevice>()
  private readonly invites = new Map<string, { person: Device['person']; label: string; until: number }>()
  private readonly tries = new Map<string, number[]>()

  constructor(store: Store, now: () => number) {
    this.store = store
    this.now = now
    this.register = new Register(store, now)
  }

  async start(): Promise<void> {
    await this.register.start()
    for (const { json } of await this.store.documents(kind)) {
      const device = JSON.parse(json) as KeptDevice
      if (!device.removed) this.devices.set(device.hash, device)
    }
  }

  /** True until the first browser was paired as the owner's. */
  isNew(): boolean {
    return ![...this.devices.values()].some((device) => device.person === 'owner')
  }

  /** A secret for one browser; whoever brings it first within a quarter of an hour is paired. */
  invite(person: Device['person'], label: string): string {
    const secret = randomBytes(16).toString('base64url') // 128 bits: it cannot be guessed within its quarter of an hour
    this.invites.set(hashOf(secret), { person, label, until: this.now() + inviteForMs })
    return secret
  }

  /**
   * One try from an address; a wrong secret counts against it and stands in the register.
   * @throws Problem `too-many-tries` or `code-used`
   */
  async pairFrom(address: string, secret: string): Promise<{ secret: string; device: Device }> {
    if (!this.mayTry(address)) throw new Problem('too-many-tries')
    const paired = await this.pair(secret)
    if (paired) return paired
    this.failed(address)
    this.register.note('pair-refused', 'anyone', address)
    throw new Problem('code-used')
  }

  /** The lasting secret of the browser, or null where the invitation is unknown, used or too old. */
  async pair(secret: string): Promise<{ secret: string; device: Device } | null> {
    const hash = hashOf(secret)
    const invite = this.invites.get(hash)
    this.invites.delete(hash)
    if (!invite || invite.until < this.now()) return null
    const lasting = newSecret()
    const device: KeptDevice = {
      id: randomUUID(),
      person: invite.person,
      label: invite.label,
      pairedAt: this.now(),
      hash: hashOf(lasting),
    }
    await this.keep(device)
    this.devices.set(device.hash, device)
    return { secret: lasting, device }
  }

  /** False when too many wrong secrets came from this address in the last minute; others are not locked out by it. */
  private mayTry(address: string): boolean {
    const now = this.now()
    const recent = (this.tries.get(address) ?? []).filter((at) => now - at < triesWithinMs)
    if (recent.length > 0) this.tries.set(address, recent)
    else this.tries.delete(address)
    return recent.length < mostTries
  }

  private failed(address: string): void {
    if (this.tries.size >= mostAddresses) this.tries.delete([...this.tries.keys()][0] ?? '')
    this.tries.set(address, [...(this.tries.get(address) ?? []), this.now()])
  }

  /** Null for a secret that is unknown, removed, or was not used for too long. */
  deviceOf(secret: string | undefined): Device | null {
    if (!secret) return null
    const hash = hashOf(secret)
    const device = this.devices.get(hash)
    if (!device || !timingSafeEqual(Buffer.from(device.hash), Buffer.from(hash))) return null
    const now = this.now()
    const usedAt = device.usedAt ?? device.pairedAt
    if (now - usedAt > idleMs[device.person] || now - device.pairedAt > longestMs) return null
    if (now - usedAt > noteUseEveryMs) this.noteUse({ ...device, usedAt: now })
    return device
  }

  list(): Device[] {
    return [...this.devices.values()].map(({ hash: _, removed: __, ...device }) => device)
  }

  async remove(id: string): Promise<boolean> {
    const device = [...this.devices.values()].find((one) => one.id === id)
    if (!device) return false
    await this.keep({ ...device, removed: true })
    this.devices.delete(device.hash)
    return true
  }

  private noteUse(device: KeptDevice): void {
    this.devices.set(device.hash, device)
    // a failing disk must not shut anybody out
    this.keep(device).catch(() => {})
  }

  private async keep(device: KeptDevice): Promise<void> {
    await this.store.putDocument({ kind, id: device.id, at: this.now(), by: 'service', json: JSON.stringify(device) })
  }
}
