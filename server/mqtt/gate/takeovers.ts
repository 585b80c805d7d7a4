const minuteMs = 60_000

/** Counts how often one client id threw another connection of the same id out. */
export class Takeovers {
  readonly #perMinute: number
  readonly #times = new Map<string, number[]>()

  constructor(perMinute: number) {
    this.#perMinute = perMinute
  }

  /** @param nowMs on a clock that never steps */
  allow(clientId: string, nowMs: number): boolean {
    for (const [id, times] of this.#times) if (nowMs - (times.at(-1) ?? 0) > minuteMs) this.#times.delete(id)
    const recent = (this.#times.get(clientId) ?? []).filter((time) => nowMs - time <= minuteMs)
    this.#times.set(clientId, [...recent, nowMs])
    return recent.length < this.#perMinute
  }
}
