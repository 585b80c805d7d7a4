import type { Action } from '../../../../server/contract/actions.ts'
import type { ActId, KilnId, Ms } from '../../../../server/contract/fold.ts'
import type { ClientMessage } from '../../../../server/contract/live.ts'

export interface Entry {
  id: ActId
  kiln: KilnId
  act: Action
  doneAt: Ms
  corrects?: ActId
  problem?: string
}

/** What keeps the entries over a reload; `localStorage` in the page. */
export interface Drawer {
  getItem(key: string): string | null
  setItem(key: string, value: string): void
}

/** A second touch on the same key within this time is the same touch (wet gloves, rain). */
const sameTouchMs = 2000

/** `crypto.randomUUID` is missing on a plain-HTTP page, random bytes are not. */
export function newActId(): ActId {
  return Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => byte.toString(16).padStart(2, '0')).join('')
}

/** Entries on their way to the service: kept until it says `act-taken`, sent again with the same id after a cut. */
export class Outbox {
  entries = $state<Entry[]>([])
  readonly #drawer: Drawer
  readonly #key: string
  readonly #counter: () => number
  #lastTouch = { what: '', atMs: -Infinity }

  waiting = $derived(this.entries.filter((entry) => entry.problem === undefined))
  refused = $derived(this.entries.filter((entry) => entry.problem !== undefined))

  /** @param key one drawer for each place, so that an entry of the demo never reaches a real kiln. */
  constructor(drawer: Drawer, key: string, counter: () => number = () => performance.now()) {
    this.#drawer = drawer
    this.#key = key
    this.#counter = counter
    this.entries = read(drawer, key)
  }

  /** The entry, or null when it is the same touch once more. */
  add(kiln: KilnId, act: Action, doneAt: Ms, corrects?: ActId): Entry | null {
    const what = `${kiln} ${JSON.stringify(act)} ${corrects ?? ''}`
    const now = this.#counter()
    if (this.#lastTouch.what === what && now - this.#lastTouch.atMs < sameTouchMs) return null
    this.#lastTouch = { what, atMs: now }
    const entry: Entry = { id: newActId(), kiln, act, doneAt: Math.round(doneAt), ...(corrects === undefined ? {} : { corrects }) }
    this.entries = [...this.entries, entry]
    this.#keep()
    return entry
  }

  /** Everything that waits, in order; the service takes an id only once. */
  sendAll(send: (message: ClientMessage) => boolean): void {
    for (const { problem, ...entry } of $state.snapshot(this.entries)) if (problem === undefined && !send({ type: 'act', ...entry })) return
  }

  taken(id: ActId): void {
    this.entries = this.entries.filter((entry) => entry.id !== id)
    this.#keep()
  }

  refusedWith(id: ActId, problem: string): void {
    this.entries = this.entries.map((entry) => (entry.id === id ? { ...entry, problem } : entry))
    this.#keep()
  }

  forget(id: ActId): void {
    this.taken(id)
  }

  #keep(): void {
    this.#drawer.setItem(this.#key, JSON.stringify(this.entries))
  }
}

function read(drawer: Drawer, key: string): Entry[] {
  try {
    const kept: unknown = JSON.parse(drawer.getItem(key) ?? '[]')
    return Array.isArray(kept) ? (kept as Entry[]) : []
  } catch {
    return []
  }
}
