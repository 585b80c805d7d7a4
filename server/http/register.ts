import { createHash } from 'node:crypto'
import type { Store } from '../storage/store.ts'

/** One line of the register: who did what, when, and from where (reliability 6, S32). */
export interface RegisterLine {
  n: number
  /** ISO 8601 with the offset of where the box stands. */
  at: string
  what: string
  who: string
  from: string
  /** SHA-256 over the line before and this one: a line that was changed or taken out shows. */
  hash: string
}

const kind = 'register'

/** Append-only and chained. A disk that fails must not keep anybody from acting, so nobody waits for it. */
export class Register {
  private readonly store: Store
  private readonly now: () => number
  private readonly lines: RegisterLine[] = []
  private writing: Promise<unknown> = Promise.resolve()
  private sound = true

  constructor(store: Store, now: () => number) {
    this.store = store
    this.now = now
  }

  async start(): Promise<void> {
    const kept = (await this.store.documents(kind)).map(({ json }) => JSON.parse(json) as RegisterLine)
    this.lines.push(...kept.sort((a, b) => a.n - b.n))
    this.sound = this.lines.every(({ hash, ...line }, index) => line.n === index + 1 && hash === hashOf(line, this.lines[index - 1]))
  }

  note(what: string, who: string, from: string): void {
    const before = this.lines.at(-1)
    const open = { n: (before?.n ?? 0) + 1, at: withOffset(this.now()), what, who, from }
    const line = { ...open, hash: hashOf(open, before) }
    this.lines.push(line)
    const document = { kind, id: String(line.n), at: this.now(), by: who, json: JSON.stringify(line) }
    this.writing = this.writing.then(() => this.store.putDocument(document)).catch(() => {})
  }

  /** Resolves when what was noted has reached the disk, or was refused by it. */
  async settled(): Promise<void> {
    await this.writing
  }

  /** False when the start found a line changed or missing. */
  whole(): boolean {
    return this.sound
  }

  newest(limit: number): RegisterLine[] {
    return this.lines.slice(-limit).reverse()
  }
}

function hashOf({ n, at, what, who, from }: Omit<RegisterLine, 'hash'>, before: RegisterLine | undefined): string {
  return createHash('sha256')
    .update(JSON.stringify([before?.hash ?? '', n, at, what, who, from]))
    .digest('hex')
}

function withOffset(now: number): string {
  const ahead = -new Date(now).getTimezoneOffset()
  const two = (n: number) => String(Math.floor(Math.abs(n))).padStart(2, '0')
  const local = new Date(now + ahead * 60_000).toISOString().slice(0, -1)
  return `${local}${ahead < 0 ? '-' : '+'}${two(ahead / 60)}:${two(Math.abs(ahead) % 60)}`
}
