const kept = { days: 7, weeks: 4, months: 12 } as const
const dayMs = 24 * 3_600_000

/**
 * Which backups stay: of each of the last 7 days, 4 weeks and 12 months that have one, the newest (reliability 10.1). Counted in days that
 * have a backup, so that a service that rested keeps its old ones.
 * @param names names that start with the ISO date of their making, newest first
 */
export function keptOf(names: readonly string[]): Set<string> {
  const stay = new Set<string>()
  for (const [most, periodOf] of [
    [kept.days, dayOf],
    [kept.weeks, (name: string) => String(Math.floor((Date.parse(dayOf(name)) / dayMs + 3) / 7))], // weeks begin on Monday
    [kept.months, (name: string) => name.slice(0, 7)],
  ] as const) {
    const seen = new Set<string>()
    for (const name of names) {
      const period = periodOf(name)
      if (seen.has(period) || seen.size >= most) continue
      seen.add(period)
      stay.add(name)
    }
  }
  return stay
}

const dayOf = (name: string): string => name.slice(0, 10)
