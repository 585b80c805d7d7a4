import { nightsBehind } from './run.ts'
import type { Result } from './sums.ts'

const inTimeMin = 180
const part = (some: number, of: number): string => (of === 0 ? '-' : `${((100 * some) / of).toFixed(0)} %`)

/** What nights behind a night earn: leaks told against nights that cry, by world and by how many lie behind. */
export function tellBehind(all: readonly { behind: number; result: Result }[]): string {
  const lines = ['world    nights behind   leaks   told in 3 h   ever   tight   cried   in 3 h / ever at 3 % crying   at 5 %']
  for (const world of ['drum', 'zones', 'pieces', null])
    for (const behind of nightsBehind) {
      const mine = all.flatMap((r) =>
        r.behind === behind && (world === null || r.result.world === world) && !r.result.off ? r.result : [],
      )
      const leaks = mine.filter((r) => r.kind === 'leak')
      const tight = mine.filter((r) => r.kind !== 'leak')
      const told = (within: number): number => leaks.filter((r) => r.leakToldMin !== null && r.leakToldMin <= within).length
      const at = (crying: number): string => {
        const sorted = tight.map((r) => r.signs.tight).sort((a, b) => b - a)
        const from = sorted[Math.floor(crying * tight.length)] ?? 0
        const inTime = leaks.filter((r) => r.signs.inTime > from).length
        return `${part(inTime, leaks.length)} / ${part(leaks.filter((r) => Math.max(r.signs.inTime, r.signs.ever) > from).length, leaks.length)} (${from.toFixed(1)})`
      }
      lines.push(
        `${(world ?? 'all').padEnd(8)} ${String(behind).padStart(6)} ${String(leaks.length).padStart(14)} ${part(told(inTimeMin), leaks.length).padStart(10)} ${part(told(Infinity), leaks.length).padStart(10)} ${String(tight.length).padStart(7)} ${part(tight.filter((r) => r.falseLeaks > 0).length, tight.length).padStart(7)}   ${at(0.03)}   ${at(0.05)}`,
      )
    }
  return lines.join('\n')
}
