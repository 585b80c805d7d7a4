import type { KilnId, Ms, Output } from '../../contract/fold.ts'
import type { FiringSummary } from '../../contract/live.ts'
import {
  StoreProblem,
  type Checkpoint,
  type CurvePoint,
  type CurveSeries,
  type FiringRecord,
  type JournalEntry,
  type Quarantined,
  type Store,
  type StoredDocument,
} from '../store.ts'
import { newestBackupAt } from './backup.ts'
import { Backups, type BackupSource, type StoreLog } from './backups.ts'
import { packEntries, unpackEntries } from './pack.ts'
import { placesIn } from './places.ts'
import type { Query, ThreadSetup, WriteOperation } from './messages.ts'
import type { Opening } from './opening.ts'
import { storageProgram } from './program.ts'
import { StoreThread, type Waiting } from './thread.ts'
import type { Drawn } from './tables/drawn.ts'

export interface SqliteOptions {
  /** The data folder; made when it is missing. */
  folder: string
  /** Wall clock, ms, for the names of backups and of what is set aside. */
  now?: () => Ms
  /** Room that is freed for events when the disk is full. */
  ballastBytes?: number
  /** How long readings wait for company while the disk is idle, ms. */
  windowMs?: number
  /** The built thread program. */
  program?: string
  log?: StoreLog
}

export interface SqliteStore extends Store {
  start(): Promise<{ lastSeq: number; lastAt: Ms; opening: Opening }>
  /** A verified copy in the data folder. @returns its path */
  backup(): Promise<string>
}

/** Calls that may wait for the disk at once; beyond it the disk is too slow and callers are told so. */
const mostWaiting = 50_000
const reopenAfterMs = 1000
const windowMs = 4
/** Entries that are company enough. */
const fullBatch = 200
const mostUnderWay = 2

interface Gathered {
  urgent: boolean
  entries: JournalEntry[]
  answer: Promise<void>
  call: Waiting
}

type Unnumbered<O> = O extends WriteOperation ? Omit<O, 'id'> : never

export function createSqliteStore(options: SqliteOptions): SqliteStore {
  return new ThreadedStore(options)
}

class ThreadedStore implements SqliteStore {
  readonly #options: SqliteOptions
  readonly #log: StoreLog
  readonly #backups: Backups
  #writer: StoreThread | null = null
  #reader: StoreThread | null = null
  #outgoing: WriteOperation[] = []
  /** Entries that become one operation; all who brought one wait for the same answer. */
  #gathered: Gathered | null = null
  /** Entries and other operations without an answer yet. */
  #unanswered = 0
  #immediate: NodeJS.Immediate | null = null
  #timer: NodeJS.Timeout | null = null
  #stopping = false

  readonly #answered = () => {
    if (this.#gathered !== null || this.#outgoing.length > 0) this.#send()
  }

  constructor(options: SqliteOptions) {
    this.#options = options
    this.#log = options.log ?? { info: () => {}, warn: () => {} }
    const source: BackupSource = {
      make: async () => (await StoreThread.once(this.#program(), this.#setup('keeper'))) as string,
      newestAt: () => newestBackupAt(placesIn(options.folder)),
      now: options.now ?? Date.now,
    }
    this.#backups = new Backups(source, this.#log)
  }

  async start(): Promise<{ lastSeq: number; lastAt: Ms; opening: Opening }> {
    this.#stopping = false
    const { thread, opened } = await StoreThread.open(
      this.#program(),
      this.#setup('writer'),
      () => this.#reopenLater('writer'),
      this.#answered,
    )
    this.#writer = thread
    try {
      const reader = await StoreThread.open(this.#program(), this.#setup('reader'), () => this.#reopenLater('reader'))
      this.#reader = reader.thread
    } catch (error) {
      await this.stop()
      throw error
    }
    if (opened.opening.setAside !== null) this.#log.warn(opened.opening, 'the database was damaged and set aside')
    if (opened.opening.logGone) this.#log.warn({}, 'the log of the database is gone: what was acknowledged last may be missing')
    this.#backups.start()
    return opened
  }

  async stop(): Promise<void> {
    this.#stopping = true
    await this.#backups.stop()
    this.#send()
    // the writer last: it folds the log into the database when nobody reads any more
    await this.#reader?.stop()
    await this.#writer?.stop()
    this.#reader = null
    this.#writer = null
  }

  append(entries: readonly JournalEntry[]): Promise<void> {
    try {
      this.#room()
    } catch (error) {
      return Promise.reject(error as StoreProblem)
    }
    const urgent = entries.some((entry) => entry.kind !== 'message')
    if (this.#gathered?.urgent !== urgent) this.#pack()
    const gathered = (this.#gathered ??= gather(urgent))
    for (const entry of entries) gathered.entries.push(entry)
    this.#unanswered += entries.length
    this.#sendSoon(urgent)
    return gathered.answer
  }

  async *read(after: number, upTo = Number.MAX_SAFE_INTEGER): AsyncIterable<JournalEntry[]> {
    for (let from = after; ;) {
      const page = unpackEntries((await this.#ask({ query: 'read', after: from, upTo })) as Uint8Array)
      const last = page.at(-1)
      if (last === undefined) return
      yield page
      from = last.seq
    }
  }

  async saveCheckpoint(checkpoint: Checkpoint): Promise<void> {
    await this.#write({ op: 'checkpoint', urgent: false, checkpoint: { ...checkpoint, bytes: checkpoint.bytes.slice() } })
  }
  async checkpoints(): Promise<Checkpoint[]> {
    return (await this.#ask({ query: 'checkpoints' })) as Checkpoint[]
  }
  async quarantine(items: readonly Quarantined[]): Promise<void> {
    await this.#write({ op: 'quarantine', urgent: false, items: items.map((item) => ({ ...item, payload: item.payload.slice(0, 4096) })) })
  }
  async quarantined(limit: number): Promise<Quarantined[]> {
    return (await this.#ask({ query: 'quarantined', limit })) as Quarantined[]
  }
  async saveOutputs(kiln: KilnId, firing: string | null, outputs: readonly Output[]): Promise<void> {
    await this.#write({
      op: 'outputs',
      urgent: outputs.some((output) => output.kind === 'alarm' || output.kind === 'call'),
      kiln,
      firing,
      outputs,
    })
  }
  async outputs(firing: string, kinds: readonly Output['kind'][] | null = null): Promise<Output[]> {
    return (await this.#ask({ query: 'outputs', firing, kinds })) as Output[]
  }
  async savePoints(firing: string, points: readonly CurvePoint[]): Promise<void> {
    await this.#write({ op: 'points', urgent: false, firing, points })
  }
  async curve(firing: string, from: Ms, to: Ms, buckets: number): Promise<CurveSeries[]> {
    return (await this.#ask({ query: 'curve', firing, from, to, buckets })) as CurveSeries[]
  }
  async wholeCurve(firing: string, from: Ms, to: Ms): Promise<CurveSeries[]> {
    const { kept, ...drawn } = (await this.#ask({ query: 'whole-curve', firing, from, to })) as Drawn & { kept: boolean }
    // who looks at it need not wait for the disk, and a full disk is no reason to show nothing
    if (!kept) this.#write({ op: 'drawn', urgent: false, drawn }).catch(() => {})
    return drawn.series
  }
  async putFiring(firing: FiringRecord): Promise<void> {
    await this.#write({ op: 'firing', urgent: true, firing: { ...firing, intake: firing.intake.slice() } })
    if (firing.endedAt !== null && !firing.demo) this.#backups.soon()
  }
  async firing(id: string): Promise<FiringRecord | null> {
    return (await this.#ask({ query: 'firing', id })) as FiringRecord | null
  }
  async firings(): Promise<FiringSummary[]> {
    return JSON.parse(await this.shelf()) as FiringSummary[]
  }
  async shelf(most = Number.MAX_SAFE_INTEGER): Promise<string> {
    return (await this.#ask({ query: 'shelf', most })) as string
  }
  async putDocument(document: Omit<StoredDocument, 'revision'>): Promise<number> {
    return (await this.#write({ op: 'document', urgent: true, document })) as number
  }
  async documents(kind: string): Promise<StoredDocument[]> {
    return (await this.#ask({ query: 'documents', kind })) as StoredDocument[]
  }
  async history(kind: string, id: string): Promise<StoredDocument[]> {
    return (await this.#ask({ query: 'history', kind, id })) as StoredDocument[]
  }
  backup(): Promise<string> {
    return this.#backups.now()
  }

  #program(): string {
    return this.#options.program ?? storageProgram()
  }

  #setup(role: ThreadSetup['role']): ThreadSetup {
    const { folder, now = Date.now, ballastBytes = 32 << 20 } = this.#options
    return { role, folder, nowMs: now(), ballastBytes }
  }

  #room(): StoreThread {
    if (this.#writer === null) throw new StoreProblem('io', 'the store is not open')
    if (this.#unanswered >= mostWaiting) throw new StoreProblem('busy', 'too many calls wait for the disk')
    return this.#writer
  }

  async #write(operation: Unnumbered<WriteOperation>): Promise<unknown> {
    const writer = this.#room()
    this.#pack()
    this.#unanswered++
    return new Promise((resolve, reject) => {
      this.#outgoing.push({ ...operation, id: writer.expect(this.#counted(1, { resolve, reject })) } as WriteOperation)
      this.#sendSoon(operation.urgent)
    })
  }

  async #ask(ask: Query): Promise<unknown> {
    const reader = this.#reader
    if (reader === null) throw new StoreProblem('io', 'the store is not open')
    return new Promise((resolve, reject) => reader.post({ id: reader.expect({ resolve, reject }), ask }))
  }

  /**
   * Readings wait for company as long as the disk is at work, and for a moment when it is not; events go at once. Two batches are under
   * way at most, so that the writer has the next one when it has done with the first.
   */
  #sendSoon(urgent: boolean): void {
    const underWay = this.#writer?.unanswered ?? 0
    if (urgent || (underWay < mostUnderWay && (this.#gathered?.entries.length ?? 0) >= fullBatch)) {
      this.#immediate ??= setImmediate(() => this.#send())
    } else if (underWay === 0) {
      this.#timer ??= setTimeout(() => this.#send(), this.#options.windowMs ?? windowMs)
    }
  }

  #pack(): void {
    if (this.#gathered === null) return
    const { call, urgent, entries } = this.#gathered
    this.#gathered = null
    const counted = this.#counted(entries.length, call)
    if (this.#writer === null) counted.reject(new StoreProblem('io', 'the store is not open'))
    else this.#outgoing.push({ op: 'append', id: this.#writer.expect(counted), urgent, entries: packEntries(entries) })
  }

  #counted(count: number, { resolve, reject }: Waiting): Waiting {
    const settled = () => (this.#unanswered -= count)
    return {
      resolve: (value) => {
        settled()
        resolve(value)
      },
      reject: (error) => {
        settled()
        reject(error)
      },
    }
  }

  #send(): void {
    if (this.#immediate !== null) clearImmediate(this.#immediate)
    if (this.#timer !== null) clearTimeout(this.#timer)
    this.#immediate = null
    this.#timer = null
    this.#pack()
    if (this.#outgoing.length === 0) return
    const writes = this.#outgoing
    this.#outgoing = []
    const transfer = writes.flatMap((operation) => (operation.op === 'append' ? [operation.entries.buffer as ArrayBuffer] : []))
    this.#writer?.post({ writes }, transfer)
  }

  /** A thread that died (out of memory, a fault in the engine) is started anew; meanwhile calls fail and nobody is acknowledged. */
  #reopenLater(role: 'writer' | 'reader'): void {
    if (this.#stopping) return
    if (role === 'writer') this.#writer = null
    else this.#reader = null
    setTimeout(() => void this.#reopen(role), reopenAfterMs).unref()
  }

  async #reopen(role: 'writer' | 'reader'): Promise<void> {
    if (this.#stopping) return
    try {
      const { thread } = await StoreThread.open(this.#program(), this.#setup(role), () => this.#reopenLater(role), this.#answered)
      if (role === 'writer') this.#writer = thread
      else this.#reader = thread
      this.#log.warn({ role }, 'a storage thread had died and runs again')
    } catch {
      this.#reopenLater(role)
    }
  }
}

function gather(urgent: boolean): Gathered {
  let call: Waiting = { resolve: () => {}, reject: () => {} }
  const answer = new Promise<void>((resolve, reject) => {
    call = { resolve: () => resolve(), reject }
  })
  return { urgent, entries: [], answer, call }
}
