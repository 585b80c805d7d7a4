import type { Checked } from '../../contract/entry-problems.ts'
import type { Ms } from '../../contract/fold.ts'
import type { DateText, LotEntry } from '../../contract/lots.ts'
import { problem, refuse } from '../../domain/entered/number.ts'
import { admit, foldLedger } from '../../domain/lots/ledger.ts'
import type { Store } from '../../storage/store.ts'
import type { LotWord } from './entry-schema.ts'

const kind = 'lot-entry'

interface Kept {
  /** Place in the ledger, so that what was entered within one millisecond keeps its order. */
  n: number
  entry: LotEntry
}

/** What the book needs of the instance that it belongs to. */
export interface BookDoors {
  store: Pick<Store, 'documents' | 'putDocument'>
  now(): Ms
  clockSure(): boolean
  /** Calendar date at the site. */
  dateOf(at: Ms): DateText
}

/** The ledger of lots in the store. Entries are admitted one after the other, so that two tablets can not draw the same litre. */
export class LotBook {
  private readonly doors: BookDoors
  private entries: LotEntry[] = []
  private turn: Promise<unknown> = Promise.resolve()
  private begun: Promise<void> | null = null

  constructor(doors: BookDoors) {
    this.doors = doors
  }

  start(): Promise<void> {
    // a disk that fails once must not close the book for good
    this.begun ??= this.load().catch((problem: unknown) => {
      this.begun = null
      throw problem
    })
    return this.begun
  }

  async all(): Promise<readonly LotEntry[]> {
    await this.start()
    return this.entries
  }

  today(): { date: DateText; clockSure: boolean } {
    return { date: this.doors.dateOf(this.doors.now()), clockSure: this.doors.clockSure() }
  }

  /** Admitted and stored, or refused with everything that is wrong. The same word sent twice counts once. */
  async add(word: LotWord, by: string): Promise<Checked<LotEntry>> {
    const mine = this.turn.then(() => this.admitOne(word, by))
    this.turn = mine.catch(() => undefined)
    return mine
  }

  private async admitOne(word: LotWord, by: string): Promise<Checked<LotEntry>> {
    await this.start()
    const known = this.entries.find((entry) => entry.id === word.id)
    if (known && JSON.stringify(known.event) === JSON.stringify(word.event)) return { ok: true, value: known }
    const at = this.doors.now()
    const entry: LotEntry = {
      id: word.id,
      at,
      ...this.whenDone(word, at),
      by,
      event: word.event,
      ...(word.corrects === undefined ? {} : { corrects: word.corrects }),
    }
    const { date, clockSure } = this.today()
    if (clockSure && entry.date > date) return refuse(problem('date-in-future', 'date', { date: entry.date, high: date }))
    const after = admit(this.entries, entry)
    if (!after.ok) return after
    const kept: Kept = { n: this.entries.length, entry }
    await this.doors.store.putDocument({ kind, id: entry.id, at, by, json: JSON.stringify(kept) })
    this.entries = [...this.entries, entry]
    return { ok: true, value: entry }
  }

  /** A correction that names no day keeps the day of what it corrects. A day that a person named does not hang on the clock of the box. */
  private whenDone(word: LotWord, at: Ms): Pick<LotEntry, 'doneAt' | 'date' | 'clockSure'> {
    const earlier = word.date === undefined ? this.entries.find(({ id }) => id === word.corrects) : undefined
    if (earlier) return { doneAt: earlier.doneAt, date: earlier.date, clockSure: earlier.clockSure }
    const doneAt = word.doneAt ?? at
    return { doneAt, date: word.date ?? this.doors.dateOf(doneAt), clockSure: word.date !== undefined || this.doors.clockSure() }
  }

  private async load(): Promise<void> {
    const kept = (await this.doors.store.documents(kind)).map(({ json }) => JSON.parse(json) as Kept)
    this.entries = kept.sort((a, b) => a.n - b.n).map(({ entry }) => entry)
    const folded = foldLedger(this.entries)
    if (!folded.ok) throw new Error(`the ledger of lots does not fold: ${JSON.stringify(folded.problems)}`)
  }
}

/** The date on the wall where the box stands. */
export function dateHere(at: Ms): DateText {
  const day = new Date(at)
  const two = (n: number): string => String(n).padStart(2, '0')
  return `${String(day.getFullYear())}-${two(day.getMonth() + 1)}-${two(day.getDate())}`
}
