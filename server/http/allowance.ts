/** A page with its parts, a chart and a tablet that comes back after an hour stay far below. Common practice, no source. */
const perS = 30
const burst = 300
const mostAddresses = 2000

/** How many questions one address may ask; a flood is answered shortly and costs nothing (reliability 6, S24). */
export class Allowance {
  private readonly left = new Map<string, { tokens: number; at: number }>()

  /** @param now ms of a clock that never goes back */
  take(address: string, now: number): boolean {
    const before = this.left.get(address) ?? { tokens: burst, at: now }
    const tokens = Math.min(burst, before.tokens + ((now - before.at) / 1000) * perS)
    this.left.delete(address)
    if (this.left.size >= mostAddresses) this.left.delete([...this.left.keys()][0] ?? '')
    this.left.set(address, { tokens: Math.max(0, tokens - 1), at: now })
    return tokens >= 1
  }
}
