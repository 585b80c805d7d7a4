/** Times in ms; null for what was never heard. */
export function summary(took: readonly (number | null)[]): string {
  const heard = took.filter((ms) => ms !== null).sort((a, b) => a - b)
  const part = (share: number): string =>
    (heard[Math.min(heard.length - 1, Math.floor(share * heard.length))] ?? NaN).toFixed(1).padStart(6)
  return `missed ${took.length - heard.length}, p50 ${part(0.5)} ms, p90 ${part(0.9)} ms, p99 ${part(0.99)} ms, slowest ${part(1)} ms`
}
