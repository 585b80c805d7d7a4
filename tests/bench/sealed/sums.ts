import { burnsAt } from './burning.ts'
import { leadMin, type Course } from './course.ts'
import type { Followed } from './follow.ts'
import type { Readings } from './probes.ts'

/** What the call promises, and from where on an opening is unsafe, as the scorer of recorded firings counts both (trade facts 7.3.1: 40 to 50 °C). */
const limitC = 45
const unsafeC = 50
/** Charcoal that burns more than this at the call is a fire, W. */
const fireW = 5
/** Told in time: three hours, as the scorer of recorded firings counts. */
const inTimeMin = 180

/** Firebox, wall and outlet; beside them one for the air; one in the middle of the charge, with or without that. */
const fittings = ['three', '+ ambient', '+ core'] as const

/** What one sealed phase came to. */
export interface Result {
  name: string
  world: Course['world']
  kind: 'tight' | 'leak' | 'cold-leak'
  off: boolean
  probes: (typeof fittings)[number]
  unsafe: { minute: number; hottestC: number; burningW: number } | null
  /** Opened before the hottest part was under the limit for good. */
  overLimit: boolean
  /** First call after the hottest part was under the limit for good, h, less than none before it; null where it never was, or no call came while it was followed. */
  lateH: number | null
  everSafe: boolean
  /** How much earlier than the hour "not before" the call came, h; 0 where it kept its word, null without a call. And whether that hour ever moved back. */
  brokenWordH: number | null
  tookBack: boolean
  /** Codes of what held the call back when the night was last looked at; empty where it came. */
  heldBackBy: readonly string[]
  leakToldMin: number | null
  falseLeaks: number
  offTold: boolean
  /** How far it lay from a tight night at most, in spreads: in the first three hours of burning, later, and while all was tight. */
  signs: { inTime: number; ever: number; tight: number }
}

export function resultOf(name: string, course: Course, readings: Readings, followed: Followed, signs: Result['signs']): Result {
  const burns = burnsAt(course)
  const hottest = (minute: number): number => course.hottest[minute + leadMin] ?? 999
  const safe = underForGood(course, limitC)
  const unsafeUntil = underForGood(course, unsafeC)
  const everSafe = safe < course.hottest.length
  const unsafeAt = followed.openings.find((m) => m + leadMin < unsafeUntil || (course.burningW[m + leadMin] ?? 0) > fireW)
  const first = followed.openings[0]
  const leaks = followed.raised.filter((r) => r.alarm === 'air-leak' || r.alarm === 'reignition')
  const told = burns === null ? undefined : leaks.find((r) => r.minute >= burns - 10)
  return {
    name,
    world: course.world,
    kind: course.leak === null ? 'tight' : burns === null ? 'cold-leak' : 'leak',
    off: readings.off !== null,
    probes: readings.core !== null ? '+ core' : readings.ambient !== null ? '+ ambient' : 'three',
    unsafe:
      unsafeAt === undefined ? null : { minute: unsafeAt, hottestC: hottest(unsafeAt), burningW: course.burningW[unsafeAt + leadMin] ?? 0 },
    overLimit: followed.openings.some((m) => m + leadMin < safe),
    lateH: everSafe && first !== undefined ? (first - (safe - leadMin)) / 60 : null,
    everSafe,
    brokenWordH: first === undefined ? null : Math.max(0, ...followed.notBefore.map((minute) => (minute - first) / 60)),
    tookBack: followed.notBefore.some((minute, i) => minute < (followed.notBefore[i - 1] ?? 0)),
    heldBackBy: first === undefined ? followed.lastAgainst : [],
    leakToldMin: told === undefined || burns === null ? null : told.minute - burns,
    falseLeaks: leaks.filter((r) => burns === null || r.minute < burns - 10).length,
    offTold: followed.raised.some((r) => r.alarm === 'wall-off'),
    signs,
  }
}

/** First minute of the course from which on the hottest part stays under it; the length of the course where it does not. */
function underForGood({ hottest }: Course, underC: number): number {
  let from = hottest.length
  while (from > leadMin && (hottest[from - 1] ?? 999) < underC) from--
  return from
}

const hours = (value: number): string => (Number.isFinite(value) ? value.toFixed(1) : 'later')
const quantile = (values: readonly number[], part: number): string => {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted.length === 0 ? '-' : hours(sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? 0)
}
const share = (part: number, of: number): string => (of === 0 ? '-' : `${((100 * part) / of).toFixed(0)} %`)

const isSound = (r: Result): boolean => r.kind === 'tight' && !r.off

function openings(name: string, mine: readonly Result[]): string {
  // a call that did not come while the night was followed is later than all others
  const late = mine.filter((r) => isSound(r) && r.everSafe && r.unsafe === null).map((r) => r.lateH ?? Infinity)
  const called = late.filter(Number.isFinite)
  return `${name.padEnd(9)} ${mine.length} phases, unsafe ${mine.filter((r) => r.unsafe !== null).length} (over ${limitC} °C: ${mine.filter((r) => r.overLimit).length}); opening after it was safe: median ${quantile(late, 0.5)} h, quantiles 10 ${quantile(late, 0.1)} 90 ${quantile(late, 0.9)} (of the ${called.length} of ${late.length} called while followed: ${quantile(called, 0.5)} h)`
}

/** What held back the sound nights that were never called: each by all that spoke against it at the last look. */
function heldBack(results: readonly Result[]): string {
  const never = results.filter((r) => isSound(r) && r.everSafe && r.lateH === null)
  const times = new Map<string, number>()
  for (const code of never.flatMap((r) => r.heldBackBy)) times.set(code, (times.get(code) ?? 0) + 1)
  const most = [...times].sort(([, a], [, b]) => b - a)
  return `never called while followed: ${never.length}; against it at the last: ${most.map(([code, n]) => `${code} ${n}`).join(', ') || 'nothing'}`
}

export function tell(results: readonly Result[]): string {
  const lines: string[] = []
  const worlds = [...new Set(results.map((r) => r.world))].sort()
  for (const world of worlds)
    lines.push(
      openings(
        world,
        results.filter((r) => r.world === world),
      ),
    )
  for (const probes of fittings)
    lines.push(
      openings(
        probes,
        results.filter((r) => r.probes === probes),
      ),
    )
  lines.push(openings('all', results), heldBack(results))
  for (const r of results)
    if (r.unsafe !== null)
      lines.push(
        `  UNSAFE ${r.name} ${r.kind}${r.off ? ', wall probe off' : ''}: ${(r.unsafe.minute / 60).toFixed(1)} h, hottest ${r.unsafe.hottestC.toFixed(1)} °C, burning ${r.unsafe.burningW.toFixed(0)} W`,
      )
  const called = results.flatMap((r) => r.brokenWordH ?? [])
  lines.push(
    `called before the hour told as "not before": ${called.filter((h) => h > 0).length} of ${called.length}, by ${Math.max(0, ...called).toFixed(1)} h at most; nights in which that hour moved back: ${results.filter((r) => r.tookBack).length}`,
  )
  const leaks = results.filter((r) => r.kind === 'leak' && !r.off)
  const tight = results.filter((r) => r.kind !== 'leak' && !r.off)
  const times = leaks.flatMap((r) => (r.leakToldMin === null ? [] : [r.leakToldMin / 60]))
  lines.push(
    `leaks that burn: ${leaks.length}, told within 3 h ${share(leaks.filter((r) => r.leakToldMin !== null && r.leakToldMin <= inTimeMin).length, leaks.length)}, ever ${share(times.length, leaks.length)}, after ${quantile(times, 0.5)} h (median); nights without one that cried: ${share(tight.filter((r) => r.falseLeaks > 0).length, tight.length)} of ${tight.length}`,
  )
  const off = results.filter((r) => r.off)
  const on = results.filter((r) => !r.off)
  lines.push(
    `wall probe off: told ${share(off.filter((r) => r.offTold).length, off.length)} of ${off.length}; told of one that sat: ${share(on.filter((r) => r.offTold).length, on.length)}`,
  )
  lines.push('spreads from a tight night   told within 3 h   ever   nights that cry for nothing')
  for (const from of [1, 1.5, 2, 2.5, 2.8, 3.2, 3.6, 4, 5, 6])
    lines.push(
      `${from.toFixed(1).padStart(8)} ${share(leaks.filter((r) => r.signs.inTime >= from).length, leaks.length).padStart(20)} ${share(leaks.filter((r) => Math.max(r.signs.inTime, r.signs.ever) >= from).length, leaks.length).padStart(10)} ${share(tight.filter((r) => r.signs.tight >= from).length, tight.length).padStart(14)}`,
    )
  return lines.join('\n')
}
