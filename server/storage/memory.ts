import type { KilnId, Ms, Output } from '../contract/fold.ts'
import { wholeCurvePoints, type FiringSummary } from '../contract/live.ts'
import {
  StoreProblem,
  summaryOf,
  type Checkpoint,
  type CurvePoint,
  type CurveSeries,
  type FiringRecord,
  type JournalEntry,
  type Quarantined,
  type Store,
  type StoredDocument,
} from './store.ts'
import { bucketWidthMs, grainOf, thin } from './thin.ts'

/** The store of the demo and of tests: same behaviour, gone with the process. */
export function createMemoryStore(): Store {
  return new MemoryStore()
}

class MemoryStore implements Store {
  readonly #journal: JournalEntry[] = []
  readonly #checkpoints = new Map<string, Checkpoint>()
  readonly #quarantine = new Map<string, Quarantined>()
  readonly #outputs = new Map<string, { firing: string | null; output: Output }>()
  readonly #points = new Map<string, Map<CurvePoint['role'], Map<number, number | null>>>()
  readonly #firings = new Map<string, FiringRecord>()
  readonly #documents = new Map<string, StoredDocument[]>()

  async start(): Promise<{ lastSeq: number; lastAt: Ms }> {
    const last = this.#journal.at(-1)
    const inCheckpoints = [...this.#checkpoints.values()].map((checkpoint) => checkpoint.seq)
    return { lastSeq: Math.max(last?.seq ?? 0, ...inCheckpoints), lastAt: last?.at ?? 0 }
  }
  async stop(): Promise<void> {}

  async append(entries: readonly JournalEntry[]): Promise<void> {
    for (const entry of entries) {
      const lastSeq = this.#journal.at(-1)?.seq ?? 0
      if (entry.seq > lastSeq) this.#journal.push({ ...entry, payload: entry.payload.slice() })
      else if (
        !this.#journal.some(
          (known) => known.seq === entry.seq && known.topic === entry.topic && Buffer.compare(known.payload, entry.payload) === 0,
        )
      ) {
        throw new StoreProblem('unknown', `journal number ${entry.seq} is taken, the last one is ${lastSeq}`)
      }
    }
  }

  async *read(after: number, upTo = Number.MAX_SAFE_INTEGER): AsyncIterable<JournalEntry[]> {
    const entries = this.#journal.filter((entry) => entry.seq > after && entry.seq <= upTo)
    if (entries.length > 0) yield entries
  }

  async saveCheckpoint(checkpoint: Checkpoint): Promise<void> {
    this.#checkpoints.set(checkpoint.name, { ...checkpoint, bytes: checkpoint.bytes.slice() })
  }
  async checkpoints(): Promise<Checkpoint[]> {
    return [...this.#checkpoints.values()]
  }

  async quarantine(items: readonly Quarantined[]): Promise<void> {
    for (const item of items) {
      const payload = item.payload.slice(0, 4096)
      this.#quarantine.set(JSON.stringify([item.at, item.sender, item.topic, item.reason, Buffer.from(payload).toString('hex')]), {
        ...item,
        payload,
      })
    }
  }
  async quarantined(limit: number): Promise<Quarantined[]> {
    return [...this.#quarantine.values()].reverse().slice(0, limit)
  }

  async saveOutputs(kiln: KilnId, firing: string | null, outputs: readonly Output[]): Promise<void> {
    for (const output of outputs) {
      const key = JSON.stringify([kiln, output.cause, output.at, output.n])
      if (!this.#outputs.has(key)) this.#outputs.set(key, { firing, output: structuredClone(output) })
    }
  }
  async outputs(firing: string, kinds?: readonly Output['kind'][]): Promise<Output[]> {
    const found = [...this.#outputs.values()]
      .filter((entry) => entry.firing === firing && (kinds?.includes(entry.output.kind) ?? true))
      .map((entry) => entry.output)
    return found.sort((a, b) => a.at - b.at || a.cause - b.cause || a.n - b.n)
  }

  async savePoints(firing: string, points: readonly CurvePoint[]): Promise<void> {
    const series = this.#points.get(firing) ?? new Map<CurvePoint['role'], Map<number, number | null>>()
    this.#points.set(firing, series)
    for (const { role, t, value } of points) {
      const own = series.get(role) ?? new Map<number, number | null>()
      series.set(role, own)
      const at = Math.round(t)
      if (!own.has(at)) own.set(at, value !== null && Number.isFinite(value) ? value : null)
    }
  }
  async curve(firing: string, from: Ms, to: Ms, buckets: number): Promise<CurveSeries[]> {
    const series = [...(this.#points.get(firing) ?? [])].sort(([a], [b]) => (a < b ? -1 : 1))
    return series.map(([role, points]) => {
      const inside = [...points].filter(([t]) => t >= from && t <= to).sort(([a], [b]) => a - b)
      const grains = inside.map(([t, value]) => grainOf(t, value))
      return { role, ...thin(grains, from, bucketWidthMs(from, to, buckets)) }
    })
  }

  async wholeCurve(firing: string, from: Ms, to: Ms): Promise<CurveSeries[]> {
    return this.curve(firing, from, to, wholeCurvePoints)
  }

  async putFiring(firing: FiringRecord): Promise<void> {
    this.#firings.set(firing.id, structuredClone(firing))
  }
  async firing(id: string): Promise<FiringRecord | null> {
    return structuredClone(this.#firings.get(id)) ?? null
  }
  async firings(): Promise<FiringSummary[]> {
    const newestFirst = [...this.#firings.values()].sort((a, b) => b.startedAt - a.startedAt || (a.id < b.id ? 1 : -1))
    return newestFirst.map((firing) => structuredClone(summaryOf(firing)))
  }
  async shelf(most?: number): Promise<string> {
    return JSON.stringify((await this.firings()).slice(0, most))
  }

  async putDocument(document: Omit<StoredDocument, 'revision'>): Promise<number> {
    const key = JSON.stringify([document.kind, document.id])
    const revisions = this.#documents.get(key) ?? []
    this.#documents.set(key, revisions)
    const last = revisions.at(-1)
    if (last !== undefined && last.at === document.at && last.by === document.by && last.json === document.json) return last.revision
    revisions.push({ ...document, revision: (last?.revision ?? 0) + 1 })
    return (last?.revision ?? 0) + 1
  }
  async documents(kind: string): Promise<StoredDocument[]> {
    const newest = [...this.#documents.values()].flatMap((revisions) => revisions.slice(-1)).filter((document) => document.kind === kind)
    return newest.sort((a, b) => (a.id < b.id ? -1 : 1))
  }
  async history(kind: string, id: string): Promise<StoredDocument[]> {
    return [...(this.#documents.get(JSON.stringify([kind, id])) ?? [])]
  }
}
