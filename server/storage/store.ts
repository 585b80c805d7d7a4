import type { KilnId, Ms, Output } from '../contract/fold.ts'
import type { FiringSummary } from '../contract/live.ts'
import type { Role } from '../contract/vocabulary.ts'

export const entryKinds = ['message', 'act', 'config', 'health'] as const

/** Everything that entered the site, raw, in order of arrival; history, charts and replays come from it. */
export interface JournalEntry {
  /** Grows by one; given by the runtime before the entry is appended. */
  seq: number
  at: Ms
  /** `message`: MQTT; `act`: JSON of an Act; `config`: JSON of a KilnConfig; `health`: JSON `{code,on}`. */
  kind: (typeof entryKinds)[number]
  /** Null for messages, which are cut up by the intake fold. */
  kiln: KilnId | null
  topic: string
  payload: Uint8Array
  retained: boolean
}

export interface Checkpoint {
  /** Whose state it is; only the newest ones of a name are kept. */
  name: string
  /** The last journal entry that is in it. */
  seq: number
  /** The last tick that is in it. */
  at: Ms
  version: number
  bytes: Uint8Array
}

/** What was acknowledged but could not be used. */
export interface Quarantined {
  at: Ms
  sender: string
  topic: string
  reason: string
  payload: Uint8Array
}

export interface CurvePoint {
  role: Role | 'smoke-estimated'
  t: Ms
  /** °C, kg or ppm by role; null is a gap. */
  value: number | null
}

/** The points of one role in order of time, in columns of the same length. */
export interface CurveSeries {
  role: CurvePoint['role']
  t: Ms[]
  value: (number | null)[]
}

/** What a firing's export needs beside the journal: where its folds started, and with what. */
export interface FiringRecord extends FiringSummary {
  originSeq: number
  originAt: Ms
  endSeq: number | null
  /** JSON of the KilnConfig at the origin. */
  config: string
  /** The frozen intake state at the origin and what the fold was told first (`runtime/origin.ts`); empty for a firing that came from a file. */
  intake: Uint8Array
  foldVersion: number
}

/** What the list of firings shows of a record. */
export function summaryOf(record: FiringSummary): FiringSummary {
  const { id, kiln, kilnName, title, startedAt, endedAt, demo, phases, spark, told } = record
  return { id, kiln, kilnName, title, startedAt, endedAt, demo, phases, spark, ...(told === undefined ? {} : { told }) }
}

/** A small document of the rest of the job (lot, check, note ...): each revision is kept. */
export interface StoredDocument {
  kind: string
  id: string
  revision: number
  at: Ms
  by: string
  json: string
}

/**
 * The use cases that need a disk. Every promise resolves after COMMIT (SQLite: WAL, synchronous FULL), in the order of the calls.
 * Rejects with a `StoreProblem`; everything is insert-or-ignore on its key, so that a retry after an in-doubt COMMIT is harmless.
 */
export interface Store {
  /** `lastSeq`: the greatest number in journal or checkpoints; the next entry's is greater. */
  start(): Promise<{ lastSeq: number; lastAt: Ms }>
  stop(): Promise<void>
  append(entries: readonly JournalEntry[]): Promise<void>
  /** Entries with `after < seq <= upTo`, in order, some thousands at a time. */
  read(after: number, upTo?: number): AsyncIterable<JournalEntry[]>
  saveCheckpoint(checkpoint: Checkpoint): Promise<void>
  /** The newest of each name. */
  checkpoints(): Promise<Checkpoint[]>
  quarantine(items: readonly Quarantined[]): Promise<void>
  quarantined(limit: number): Promise<Quarantined[]>
  saveOutputs(kiln: KilnId, firing: string | null, outputs: readonly Output[]): Promise<void>
  outputs(firing: string, kinds?: readonly Output['kind'][]): Promise<Output[]>
  savePoints(firing: string, points: readonly CurvePoint[]): Promise<void>
  /** About `buckets` points a series with the minimum and maximum of each bucket kept; gaps are nulls. */
  curve(firing: string, from: Ms, to: Ms, buckets: number): Promise<CurveSeries[]>
  /** The same from end to end of a firing that is over, drawn once and kept. */
  wholeCurve(firing: string, from: Ms, to: Ms): Promise<CurveSeries[]>
  putFiring(firing: FiringRecord): Promise<void>
  firing(id: string): Promise<FiringRecord | null>
  /** The newest first. */
  firings(): Promise<FiringSummary[]>
  /** The newest `most` of them as the text of a JSON array, which can go on its way as it is. */
  shelf(most?: number): Promise<string>
  putDocument(document: Omit<StoredDocument, 'revision'>): Promise<number>
  documents(kind: string): Promise<StoredDocument[]>
  history(kind: string, id: string): Promise<StoredDocument[]>
}

export type StoreProblemCode = 'disk-full' | 'io' | 'busy' | 'read-only' | 'damaged' | 'in-use' | 'unknown'

export class StoreProblem extends Error {
  readonly code: StoreProblemCode
  constructor(code: StoreProblemCode, message: string) {
    super(message)
    this.name = 'StoreProblem'
    this.code = code
  }
}
