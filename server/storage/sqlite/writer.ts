import { StoreProblem } from '../store.ts'
import type { Ballast } from './ballast.ts'
import { openDatabase, type Database } from './engine.ts'
import type { Failure, WriteOperation } from './messages.ts'
import { unpackEntries } from './pack.ts'
import { problemFrom } from './problems.ts'
import { JournalTable } from './tables/journal.ts'
import { PointTable } from './tables/points.ts'
import { putDrawn } from './tables/drawn.ts'
import { fillShelf, putFiring } from './tables/firings.ts'
import { newestCheckpointSeq, putCheckpoint, putDocument, putOutputs, putQuarantined } from './tables/records.ts'

export interface Outcome {
  id: number
  failure?: Failure
  result?: unknown
}

/** Waits before the second, third and fourth try on a poisoned connection, ms. */
const retryWaitsMs = [0, 50, 250, 1000]

/** Tells which operation of a batch was at fault, where the disk was not. */
class OperationFailed extends Error {
  readonly index: number
  readonly problem: StoreProblem
  constructor(index: number, problem: StoreProblem) {
    super(problem.message)
    this.index = index
    this.problem = problem
  }
}

/** The one connection that writes. Each batch is one transaction; an outcome is given only after its COMMIT. */
export class Writer {
  readonly #file: string
  readonly #ballast: Ballast
  #database: Database
  #journal: JournalTable
  #points: PointTable
  #poisoned = false

  constructor(file: string, database: Database, ballast: Ballast) {
    this.#file = file
    this.#ballast = ballast
    this.#database = database
    this.#journal = new JournalTable(database)
    this.#points = new PointTable(database)
    fillShelf(database)
    ballast.restore()
  }

  /** A number that a checkpoint knows is used up, even if its entry was never stored. */
  last(): { seq: number; at: number } {
    const { seq, at } = this.#journal.last()
    return { seq: Math.max(seq, newestCheckpointSeq(this.#database)), at }
  }

  commit(batch: readonly WriteOperation[]): Outcome[] {
    // with the ballast gone its room is for the events of a firing only
    if (!this.#ballast.restore()) return this.#commitUrgent(batch)
    try {
      return this.#commitWithRetries(batch)
    } catch (error) {
      const problem = problemFrom(error)
      if (problem.code !== 'disk-full') return batch.map((operation) => failed(operation, problem))
      this.#ballast.free()
      return this.#commitUrgent(batch)
    }
  }

  close(): void {
    if (this.#poisoned) this.#reopen()
    this.#database.exec('PRAGMA wal_checkpoint(TRUNCATE)')
    this.#database.close()
  }

  #commitUrgent(batch: readonly WriteOperation[]): Outcome[] {
    const full = new StoreProblem('disk-full', 'the disk is full')
    const urgent = batch.filter((operation) => operation.urgent)
    const outcomes = new Map<WriteOperation, Outcome>()
    try {
      if (urgent.length > 0)
        for (const [index, outcome] of this.#commitWithRetries(urgent).entries()) outcomes.set(urgent[index] ?? batch[0]!, outcome)
    } catch (error) {
      for (const operation of urgent) outcomes.set(operation, failed(operation, problemFrom(error)))
    }
    return batch.map((operation) => outcomes.get(operation) ?? failed(operation, full))
  }

  /** @throws StoreProblem when the batch as a whole can not be stored */
  #commitWithRetries(batch: readonly WriteOperation[]): Outcome[] {
    for (let attempt = 0; ; attempt++) {
      try {
        if (this.#poisoned) this.#reopen()
        return this.#commitWithout(batch, new Map())
      } catch (error) {
        const problem = problemFrom(error)
        const wait = retryWaitsMs[attempt + 1]
        if (problem.code === 'disk-full' || problem.code === 'busy' || problem.code === 'read-only') throw problem
        this.#poisoned = true
        if (wait === undefined) throw problem
        sleep(wait)
      }
    }
  }

  /** One transaction of the operations that are not at fault themselves. */
  #commitWithout(batch: readonly WriteOperation[], faults: Map<WriteOperation, StoreProblem>): Outcome[] {
    try {
      const results = this.#transaction(batch.filter((operation) => !faults.has(operation)))
      return batch.map((operation) => {
        const fault = faults.get(operation)
        return fault === undefined ? { id: operation.id, result: results.get(operation) } : failed(operation, fault)
      })
    } catch (error) {
      if (!(error instanceof OperationFailed)) throw error
      const operation = batch.filter((each) => !faults.has(each))[error.index]
      if (operation === undefined) throw error.problem
      return this.#commitWithout(batch, faults.set(operation, error.problem))
    }
  }

  #transaction(batch: readonly WriteOperation[]): Map<WriteOperation, unknown> {
    const results = new Map<WriteOperation, unknown>()
    try {
      this.#database.exec('BEGIN IMMEDIATE')
      for (const [index, operation] of batch.entries()) {
        try {
          results.set(operation, this.#apply(operation))
        } catch (error) {
          if (error instanceof StoreProblem && error.code === 'unknown') throw new OperationFailed(index, error)
          throw error
        }
      }
      this.#database.exec('COMMIT')
      return results
    } catch (error) {
      this.#rollBack()
      throw error
    }
  }

  #rollBack(): void {
    try {
      if (this.#database.isTransaction) this.#database.exec('ROLLBACK')
      this.#journal.forget()
      this.#points.forget()
    } catch {
      this.#poisoned = true
    }
  }

  #apply(operation: WriteOperation): unknown {
    switch (operation.op) {
      case 'append':
        return this.#journal.append(unpackEntries(operation.entries))
      case 'checkpoint':
        return putCheckpoint(this.#database, operation.checkpoint)
      case 'quarantine':
        return putQuarantined(this.#database, operation.items)
      case 'outputs':
        return putOutputs(this.#database, operation.kiln, operation.firing, operation.outputs)
      case 'points':
        return this.#points.put(operation.firing, operation.points)
      case 'drawn':
        return putDrawn(this.#database, operation.drawn)
      case 'firing':
        return putFiring(this.#database, operation.firing)
      case 'document':
        return putDocument(this.#database, operation.document)
    }
  }

  /**
   * After a failed write or sync nothing of the old connection is believed. What the log holds may sit in the system's memory only,
   * marked as written although it is not: copying the whole log into the database file writes and syncs it once more.
   */
  #reopen(): void {
    try {
      this.#database.close()
    } catch {
      // it is given up in any case
    }
    const database = openDatabase(this.#file, 'write')
    const checkpoint = database.prepare('PRAGMA wal_checkpoint(TRUNCATE)').get()
    if (checkpoint?.['busy'] !== 0) throw new StoreProblem('busy', 'the log could not be copied into the database')
    this.#database = database
    this.#journal = new JournalTable(database)
    this.#points = new PointTable(database)
    this.#poisoned = false
  }
}

function failed(operation: WriteOperation, problem: StoreProblem): Outcome {
  return { id: operation.id, failure: { code: problem.code, message: problem.message } }
}

/** The writer's thread has nothing else to do meanwhile. */
function sleep(ms: number): void {
  if (ms > 0) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms)
}
