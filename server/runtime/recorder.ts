import type { Ms, Output } from '../contract/fold.ts'
import type { CurvePoint, Quarantined, Store } from '../storage/store.ts'
import type { Effect } from './driver.ts'
import type { Log } from './log.ts'
import type { Session } from './session.ts'
import type { Shelf } from './shelf.ts'

interface Pending {
  kiln: string
  outputs: Output[]
  points: CurvePoint[]
}

/** A kiln that nobody fires keeps its last hour in memory only; at five readings a second that is all of it. */
const idlePoints = 20_000
const largestKeptBytes = 4096 // reliability 5: quarantine keeps raw bytes up to 4 KiB
const quarantineAtOnce = 100

/**
 * Brings what the folds told to the store: outputs, curves, firings, quarantine. Everything there is insert-or-ignore,
 * so what a recovery tells again is kept once. What cannot be stored waits here and is tried again.
 */
export class Recorder {
  private readonly store: Store
  private readonly shelf: Shelf
  private readonly log: Log
  private readonly pending = new Map<string, Pending>()
  /** Sessions that are firings and not yet closed in the store. */
  private readonly open = new Set<string>()
  private readonly openings: Session<unknown>[] = []
  private readonly closings: { session: string; at: Ms; seq: number }[] = []
  private readonly aside: Quarantined[] = []
  /** The message that was set aside last. */
  private asideSeq: number | null = null
  private writing: Promise<void> = Promise.resolve()
  private scheduled = false

  constructor(store: Store, shelf: Shelf, log: Log) {
    this.store = store
    this.shelf = shelf
    this.log = log
  }

  take(effects: readonly Effect[], sessionOf: (id: string) => Session<unknown> | null): void {
    for (const effect of effects) {
      switch (effect.kind) {
        case 'output':
          this.of(effect.session, effect.kiln).outputs.push(effect.output)
          break
        case 'point': {
          const { points } = this.of(effect.session, effect.kiln)
          points.push(effect.point)
          if (points.length > idlePoints && !this.open.has(effect.session)) points.splice(0, idlePoints / 2)
          break
        }
        case 'opened': {
          const session = sessionOf(effect.session)
          if (!session) break
          this.open.add(session.id)
          this.openings.push(session)
          break
        }
        case 'closed':
          this.closings.push(effect)
          break
        case 'refused':
          this.setAside(effect)
      }
    }
  }

  /** A session that was a firing before a restart is one after it. */
  continue(session: Session<unknown>): void {
    if (session.openedAt !== null) this.open.add(session.id)
  }

  /** The points of an idle session, which are in no store. */
  idleCurve(session: string): readonly CurvePoint[] {
    return this.pending.get(session)?.points ?? []
  }

  /** Forgets idle sessions that were left behind by a full hour. */
  keepOnly(sessions: ReadonlySet<string>): void {
    for (const id of this.pending.keys()) if (!sessions.has(id) && !this.open.has(id)) this.pending.delete(id)
  }

  /** The firings that are going on. */
  firings(): string[] {
    return [...this.open]
  }

  /** Writes what waits; one write at a time, in order. A failure leaves it waiting. */
  flush(): Promise<void> {
    if (!this.scheduled) {
      this.scheduled = true
      this.writing = this.writing.then(() => {
        this.scheduled = false
        return this.write()
      })
    }
    return this.writing
  }

  private of(session: string, kiln: string): Pending {
    const found = this.pending.get(session) ?? { kiln, outputs: [], points: [] }
    this.pending.set(session, found)
    return found
  }

  private setAside({ entry, refusal }: Extract<Effect, { kind: 'refused' }>): void {
    if (this.aside.length >= quarantineAtOnce) return // counted all the same; a flood must not fill the disk
    const { seq, at, topic, payload } = entry
    if (seq === this.asideSeq) return // one copy of a pack, however many of its records were refused
    this.asideSeq = seq
    this.aside.push({ at, sender: refusal.node ?? '', topic, reason: refusal.reason, payload: payload.slice(0, largestKeptBytes) })
  }

  private async write(): Promise<void> {
    try {
      for (let next = this.openings[0]; next; next = this.openings[0]) {
        await this.shelf.open(next)
        this.openings.shift()
      }
      for (const [session, pending] of this.pending) await this.writeSession(session, pending)
      for (let next = this.closings[0]; next; next = this.closings[0]) {
        await this.shelf.renew(next.session, next.at, next)
        this.open.delete(next.session)
        this.pending.delete(next.session)
        this.closings.shift()
      }
      const aside = this.aside.length
      if (aside > 0) await this.store.quarantine(this.aside.slice(0, aside))
      this.aside.splice(0, aside)
    } catch (problem) {
      this.log.warn({ problem }, 'what the folds told could not be written; it is kept and tried again')
    }
  }

  private async writeSession(session: string, { kiln, outputs, points }: Pending): Promise<void> {
    const told = outputs.length
    if (told > 0) await this.store.saveOutputs(kiln, session, outputs.slice(0, told))
    outputs.splice(0, told)
    if (!this.open.has(session)) return
    const drawn = points.length
    if (drawn > 0) await this.store.savePoints(session, points.slice(0, drawn))
    points.splice(0, drawn)
  }
}
