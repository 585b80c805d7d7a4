export interface StoreLog {
  info(fields: object, text: string): void
  warn(fields: object, text: string): void
}

const dailyMs = 24 * 3_600_000
/** A service that is started anew each day must come to its backup too, but not before it has settled. */
const firstLookMs = 15 * 60_000
const lookEveryMs = 3_600_000
/** After the end of a firing: what belongs to it is written in several steps. */
const settleMs = 10_000

export interface BackupSource {
  make(): Promise<string>
  /** Wall time of the newest finished one, ms; null where there is none. */
  newestAt(): number | null
  /** Wall clock, ms. */
  now(): number
}

/** When backups are made: a day after the newest, after each firing, and when asked; never two at once. */
export class Backups {
  readonly #source: BackupSource
  readonly #log: StoreLog
  #looks: NodeJS.Timeout | null = null
  /** Looks since the last one was made here: where the wall clock cannot be believed, a day is a day of service. */
  #looksSince = 0
  #soon: NodeJS.Timeout | null = null
  #running: Promise<string> | null = null

  constructor(source: BackupSource, log: StoreLog) {
    this.#source = source
    this.#log = log
  }

  start(): void {
    this.#looksSince = 0
    this.#looks = setTimeout(() => {
      this.#look()
      this.#looks = setInterval(() => this.#look(), lookEveryMs).unref()
    }, firstLookMs).unref()
  }

  /** One that has begun is let finish. */
  async stop(): Promise<void> {
    if (this.#looks !== null) clearInterval(this.#looks)
    if (this.#soon !== null) clearTimeout(this.#soon)
    this.#looks = null
    this.#soon = null
    await this.#running?.catch(() => {})
  }

  soon(): void {
    if (this.#soon !== null) clearTimeout(this.#soon)
    this.#soon = setTimeout(() => this.#inBackground(), settleMs)
    this.#soon.unref()
  }

  now(): Promise<string> {
    this.#running ??= this.#source.make().then(
      (file) => this.#ended(file),
      (error: unknown) => this.#ended(Promise.reject(error as Error)),
    )
    return this.#running
  }

  #ended<T>(result: T): T {
    this.#running = null
    this.#looksSince = 0
    return result
  }

  #look(): void {
    const newest = this.#source.newestAt()
    const isOld = newest === null || this.#source.now() - newest >= dailyMs
    if (isOld || ++this.#looksSince * lookEveryMs >= dailyMs) this.#inBackground()
  }

  #inBackground(): void {
    this.now().then(
      (file) => this.#log.info({ file }, 'backup made and verified'),
      (error: unknown) => this.#log.warn({ error: String(error) }, 'no backup could be made'),
    )
  }
}
