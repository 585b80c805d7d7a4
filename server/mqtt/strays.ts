import type { StrayTopic } from '../contract/setup.ts'
import type { Log } from './broker.ts'

/** Distinct topics that are kept; a flood of invented ones pushes out only what was not heard for longest. */
const mostTopics = 20
/** Lines of the log in an hour: each new topic is worth one, a flood is not. */
const mostLinesPerHour = 20
const hourMs = 3_600_000

/** Topics that came and could not be used, as they were sent: their senders were answered, so only here do they see it. */
export class Strays {
  readonly #log: Log
  /** By reason and topic, the one heard last at the end. */
  readonly #kept = new Map<string, StrayTopic>()
  #pushedOut = 0
  #lines = 0
  #hour = -1

  constructor(log: Log) {
    this.#log = log
  }

  /** @param atMs of any clock that does not go back */
  note(reason: string, topic: string, atMs: number): void {
    const key = `${reason} ${topic}`
    const known = this.#kept.get(key)
    this.#kept.delete(key)
    this.#kept.set(key, { topic, reason, times: (known?.times ?? 0) + 1 })
    if (known) return
    this.#tell(reason, topic, atMs)
    if (this.#kept.size <= mostTopics) return
    const [oldest] = this.#kept.keys()
    if (oldest !== undefined) this.#kept.delete(oldest)
    this.#pushedOut++
  }

  /** The one heard last first. */
  topics(): StrayTopic[] {
    return [...this.#kept.values()].reverse()
  }

  /** How often a topic gave way to a newer one. */
  pushedOut(): number {
    return this.#pushedOut
  }

  #tell(reason: string, topic: string, atMs: number): void {
    const hour = Math.floor(atMs / hourMs)
    if (hour !== this.#hour) {
      this.#hour = hour
      this.#lines = 0
    }
    if (this.#lines++ < mostLinesPerHour) this.#log.warn({ topic, reason }, 'mqtt topic of no use here')
  }
}
