import type { Ms } from '../contract/fold.ts'
import type { JournalEntry, Store } from '../storage/store.ts'
import type { Clock } from './clock.ts'

interface Waiting {
  at: Ms
  /** Null for the seconds up to `at`. */
  entry: JournalEntry | null
  ready: boolean
}

export interface InboxEars {
  /** In the order of arrival, after COMMIT or once the store has failed or kept it waiting too long. */
  fold(entry: JournalEntry): void
  tick(at: Ms): void
  /** The store failed or is slow (true), or stores again (false). */
  storage(failing: boolean): void
}

/** How long an alarm may wait for a slow disk before the folds go on from memory. */
const patienceMs = 1000

/** Gives every entry its number and its time on the axis, and lets it into the folds in that order. */
export class Inbox {
  private readonly store: Store
  private readonly clock: Clock
  private readonly ears: InboxEars
  private readonly queue: Waiting[] = []
  private failing = false
  private seq: number
  private lastAt: Ms

  constructor(store: Store, clock: Clock, ears: InboxEars, last: { seq: number; at: Ms }) {
    this.store = store
    this.clock = clock
    this.ears = ears
    this.seq = last.seq
    this.lastAt = last.at
  }

  /** The axis: it never goes back, also over a restart. */
  now(): Ms {
    this.lastAt = Math.max(this.lastAt, this.clock.now())
    return this.lastAt
  }

  /** Resolves after COMMIT and after the folds took it; rejects with a StoreProblem when it is not stored (the folds took it all the same). */
  async accept(make: (stamp: { seq: number; at: Ms }) => JournalEntry): Promise<void> {
    const entry = make({ seq: ++this.seq, at: this.now() })
    const waiting: Waiting = { at: entry.at, entry, ready: false }
    this.queue.push(waiting)
    const impatient = setTimeout(() => {
      this.storageIs(true)
      this.release(waiting)
    }, patienceMs)
    try {
      await this.store.append([entry])
      this.release(waiting)
      this.storageIs(false)
    } catch (problem) {
      this.release(waiting)
      this.storageIs(true)
      throw problem
    } finally {
      clearTimeout(impatient)
    }
  }

  /** The seconds until now, behind what has come before. */
  tick(): void {
    this.queue.push({ at: this.now(), entry: null, ready: true })
    this.pump()
  }

  private release(waiting: Waiting): void {
    waiting.ready = true
    this.pump()
  }

  private pump(): void {
    for (let head = this.queue[0]; head?.ready; head = this.queue[0]) {
      this.queue.shift()
      if (head.entry) this.ears.fold(head.entry)
      else this.ears.tick(head.at)
    }
  }

  private storageIs(failing: boolean): void {
    if (failing === this.failing) return
    this.failing = failing
    this.ears.storage(failing)
  }
}
