export interface StoreLog {
  info(fields: object, text: string): void
  warn(fields: object, text: string): void
}

const dailyMs = 24 * 3_600_000
/** After the end of a firing: what belongs to it is written in several steps. */
const settleMs = 10_000

/** When backups are made: every day, after each firing, and when asked; never two at once. */
export class Backups {
  readonly #make: () => Promise<string>
  readonly #log: StoreLog
  #daily: NodeJS.Timeout | null = null
  #soon: NodeJS.Timeout | null = null
  #running: Promise<string> | null = null

  constructor(make: () => Promise<string>, log: StoreLog) {
    this.#make = make
    this.#log = log
  }

  start(): void {
    this.#daily = setInterval(() => this.#inBackground(), dailyMs)
    this.#daily.unref()
  }

  /** One that has begun is let finish. */
  async stop(): Promise<void> {
    if (this.#daily !== null) clearInterval(this.#daily)
    if (this.#soon !== null) clearTimeout(this.#soon)
    this.#daily = null
    this.#soon = null
    await this.#running?.catch(() => {})
  }

  soon(): void {
    if (this.#soon !== null) clearTimeout(this.#soon)
    this.#soon = setTimeout(() => this.#inBackground(), settleMs)
    this.#soon.unref()
  }

  now(): Promise<string> {
    this.#running ??= this.#make().finally(() => (this.#running = null))
    return this.#running
  }

  #inBackground(): void {
    this.now().then(
      (file) => this.#log.info({ file }, 'backup made and verified'),
      (error: unknown) => this.#log.warn({ error: String(error) }, 'no backup could be made'),
    )
  }
}
