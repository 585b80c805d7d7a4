import type { Output } from '../../contract/fold.ts'
import type { Checkpoint, CurvePoint, FiringRecord, Quarantined, StoredDocument, StoreProblemCode } from '../store.ts'
import type { Opening } from './opening.ts'
import type { Drawn } from './tables/drawn.ts'

// What crosses between the store and its threads.

/** Urgent ones do not wait for company and may use the ballast's room. */
export type WriteOperation = { id: number; urgent: boolean } & (
  | { op: 'append'; entries: Uint8Array }
  | { op: 'checkpoint'; checkpoint: Checkpoint }
  | { op: 'quarantine'; items: readonly Quarantined[] }
  | { op: 'outputs'; kiln: string; firing: string | null; outputs: readonly Output[] }
  | { op: 'points'; firing: string; points: readonly CurvePoint[] }
  | { op: 'drawn'; drawn: Drawn }
  | { op: 'firing'; firing: FiringRecord }
  | { op: 'document'; document: Omit<StoredDocument, 'revision'> }
)

export type Query =
  | { query: 'read'; after: number; upTo: number }
  | { query: 'checkpoints' }
  | { query: 'quarantined'; limit: number }
  | { query: 'outputs'; firing: string; kinds: readonly Output['kind'][] | null }
  | { query: 'curve'; firing: string; from: number; to: number; buckets: number }
  | { query: 'whole-curve'; firing: string; from: number; to: number }
  | { query: 'firing'; id: string }
  | { query: 'shelf'; most: number }
  | { query: 'documents'; kind: string }
  | { query: 'history'; kind: string; id: string }

export type ToThread = { writes: WriteOperation[] } | { id: number; ask: Query } | { stop: true }

export interface Failure {
  code: StoreProblemCode
  message: string
}
export type FromThread =
  | { opened: { lastSeq: number; lastAt: number; opening: Opening } }
  | { failedToOpen: Failure }
  /** `posts`: how many of the messages sent are answered by it. */
  | { done: { id: number; failure?: Failure; result?: unknown }[]; posts?: number }

export interface ThreadSetup {
  role: 'writer' | 'reader' | 'keeper'
  folder: string
  nowMs: number
  ballastBytes: number
}
