import { entryKinds, StoreProblem, type JournalEntry } from '../../store.ts'
import type { Database, SqlValue, Statement } from '../engine.ts'
import { rowSum } from '../sums.ts'
import { insertSql, selectSql, summedTables, whole } from './summed.ts'

const table = summedTables.journal

/** Appends entries; each row also names the sequence number before it, so that a row that vanished is noticed. */
export class JournalTable {
  readonly #insert: Statement
  readonly #find: Statement
  readonly #last: Statement
  #lastSeq: number

  constructor(database: Database) {
    this.#insert = database.prepare(insertSql(table))
    this.#find = database.prepare(selectSql(table, 'WHERE seq = ?'))
    this.#last = database.prepare('SELECT seq, at FROM journal ORDER BY seq DESC LIMIT 1')
    this.#lastSeq = this.last().seq
  }

  last(): { seq: number; at: number } {
    const row = this.#last.get()
    return { seq: Number(row?.['seq'] ?? 0), at: Number(row?.['at'] ?? 0) }
  }

  /** After a rollback the rows of the transaction are gone again. */
  forget(): void {
    this.#lastSeq = this.last().seq
  }

  append(entries: readonly JournalEntry[]): void {
    for (const entry of entries) {
      if (entry.seq <= this.#lastSeq) this.#expectSame(entry)
      else {
        const values = valuesOf(entry, this.#lastSeq)
        values.push(rowSum(values))
        this.#insert.run(...values)
        this.#lastSeq = entry.seq
      }
    }
  }

  /** A retry finds its own rows. Another entry under a number that was given already would be lost, so it is refused aloud. */
  #expectSame(entry: JournalEntry): void {
    const row = this.#find.get(entry.seq)
    if (row !== undefined && sameEntry(entryFrom(whole(table, row)), entry)) return
    throw new StoreProblem('unknown', `journal number ${entry.seq} is taken, the last one is ${this.#lastSeq}`)
  }
}

function valuesOf(entry: JournalEntry, prev: number): SqlValue[] {
  return [entry.seq, prev, entry.at, entry.kind, entry.kiln, entry.topic, entry.retained ? 1 : 0, entry.payload]
}

function sameEntry(a: JournalEntry, b: JournalEntry): boolean {
  return (
    a.at === b.at &&
    a.kind === b.kind &&
    a.kiln === b.kiln &&
    a.topic === b.topic &&
    a.retained === b.retained &&
    Buffer.compare(a.payload, b.payload) === 0
  )
}

function entryFrom(row: Record<string, SqlValue>): JournalEntry {
  const kind = entryKinds.find((known) => known === row['kind'])
  if (kind === undefined) throw new StoreProblem('damaged', `journal ${String(row['seq'])} has an unknown kind`)
  return {
    seq: Number(row['seq']),
    at: Number(row['at']),
    kind,
    kiln: row['kiln'] === null ? null : String(row['kiln']),
    topic: String(row['topic']),
    payload: row['payload'] as Uint8Array,
    retained: row['retained'] === 1,
  }
}

/** Up to `limit` entries with `after < seq <= upTo`, each checked against its sum and against the entry before it. */
export function readJournal(database: Database, after: number, upTo: number, limit: number): JournalEntry[] {
  const rows = database.prepare(selectSql(table, 'WHERE seq > ? AND seq <= ? ORDER BY seq LIMIT ?')).all(after, upTo, limit)
  const before = database.prepare('SELECT max(seq) AS seq FROM journal WHERE seq <= ?').get(after)
  let prev = Number(before?.['seq'] ?? 0)
  return rows.map((row) => {
    whole(table, row)
    if (row['prev'] !== prev) throw new StoreProblem('damaged', `journal entries between ${prev} and ${String(row['seq'])} are gone`)
    prev = Number(row['seq'])
    return entryFrom(row)
  })
}
