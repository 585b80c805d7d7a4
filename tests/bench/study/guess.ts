import { type Ahead, forecastCalls, type ForecastCall, intervalScore, type Span } from './score.ts'

// What ranges are worth is told beside a guess that never changes: so many hours after lighting, whatever the probes say. It is told in
// the same minutes as the service told its own, so that neither is scored where it is easier. Every firing weighs alike.

/** Interval scores of one firing, minutes: the service's own, the best constant guess of these firings, and of the others alone. */
export interface Compared {
  firing: string
  told: number
  inside: number
  own: number
  inHindsight: number
  fromOthers: number
}

export interface Comparison {
  firings: Compared[]
  /** The best constant guess in hindsight of each call that was forecast, hours after lighting. */
  constants: Partial<Record<ForecastCall, Span>>
}

const edgeStepH = 0.25

/** Every span between two quarter hours up to the last truth. */
function spansTo(lastH: number): Span[] {
  const edges = Array.from({ length: Math.ceil(lastH / edgeStepH) + 1 }, (_, i) => i * edgeStepH)
  return edges.flatMap((from) => edges.filter((to) => to >= from).map((to): Span => [from, to]))
}

const groupBy = (all: readonly Ahead[], key: (one: Ahead) => string): Map<string, Ahead[]> => {
  const groups = new Map<string, Ahead[]>()
  for (const one of all) groups.set(key(one), [...(groups.get(key(one)) ?? []), one])
  return groups
}

const sumOf = (a: readonly number[]): number => a.reduce((x, y) => x + y, 0)

/** Score of the constant `[from, to]` told at the moments of `told`, summed, minutes; what has passed is not told again. */
const scoreOf = (told: readonly Ahead[], [from, to]: Span): number =>
  sumOf(told.map(({ at, real }) => intervalScore(Math.max(at, from), Math.max(at, to), real)))

const leastOf = (costs: Float64Array): number => costs.reduce((best, cost, i) => (cost < (costs[best] ?? Infinity) ? i : best), 0)

/** Adds to each firing's sums what the constants of one call earn in it. */
function compareCall(told: readonly Ahead[], toldIn: Map<string, number>, sums: Map<string, Compared>): Span {
  const spans = spansTo(Math.max(...told.map(({ real }) => real)))
  const byFiring = groupBy(told, ({ firing }) => firing)
  const total = new Float64Array(spans.length)
  const costs = new Map<string, Float64Array>()
  for (const [firing, these] of byFiring) {
    const cost = Float64Array.from(spans, (span) => scoreOf(these, span) / (toldIn.get(firing) ?? 1))
    cost.forEach((c, i) => (total[i] = (total[i] ?? 0) + c))
    costs.set(firing, cost)
  }
  const hindsight = leastOf(total)
  for (const [firing, cost] of costs) {
    const sum = sums.get(firing)
    if (!sum) continue
    sum.inHindsight += cost[hindsight] ?? 0
    sum.fromOthers += cost[leastOf(total.map((c, i) => c - (cost[i] ?? 0)))] ?? 0
  }
  return spans[hindsight] ?? [0, 0]
}

/** The ranges told, beside the best constants: in hindsight, and with each firing's constant from the other firings only. */
export function compared(all: readonly Ahead[]): Comparison {
  const sums = new Map<string, Compared>()
  for (const [firing, told] of groupBy(all, (one) => one.firing))
    sums.set(firing, {
      firing,
      told: told.length,
      inside: told.filter(({ earliest, latest, real }) => earliest <= real && real <= latest).length,
      own: sumOf(told.map(({ earliest, latest, real }) => intervalScore(earliest, latest, real))) / told.length,
      inHindsight: 0,
      fromOthers: 0,
    })
  const toldIn = new Map([...sums].map(([firing, { told }]) => [firing, told]))
  const constants: Comparison['constants'] = {}
  for (const call of forecastCalls) {
    const told = all.filter((one) => one.call === call)
    if (told.length > 0) constants[call] = compareCall(told, toldIn, sums)
  }
  return { firings: [...sums.values()], constants }
}

const mean = (a: readonly number[]): number => sumOf(a) / a.length
const middle = (a: readonly number[]): number => [...a].sort((x, y) => x - y)[Math.floor((a.length - 1) / 2)] ?? NaN

/** The comparison as a table: each call by itself, then all, as mean and as median over the firings. Minutes. */
export function forecastLines(all: readonly Ahead[]): string[] {
  const lines = ['forecasts, interval score in minutes    told  inside   own   best constant, in hindsight   from other kilns only']
  const row = (name: string, { firings }: Comparison, of: (a: readonly number[]) => number): void => {
    const own = of(firings.map((one) => one.own))
    const cell = (constant: number): string => `${constant.toFixed(0)} (${(own / constant).toFixed(2)} of it)`
    const told = sumOf(firings.map((one) => one.told))
    const inside = ((100 * sumOf(firings.map((one) => one.inside))) / told).toFixed(0)
    lines.push(
      `${name.padEnd(37)} ${String(told).padStart(6)}  ${inside.padStart(4)} % ${own.toFixed(0).padStart(5)}  ${cell(of(firings.map((one) => one.inHindsight))).padStart(28)}  ${cell(of(firings.map((one) => one.fromOthers))).padStart(22)}`,
    )
  }
  for (const call of forecastCalls) {
    const told = all.filter((one) => one.call === call)
    if (told.length === 0) continue
    const comparison = compared(told)
    const [from, to] = comparison.constants[call] ?? [NaN, NaN]
    row(`${call} (constant ${from.toFixed(1)} to ${to.toFixed(1)} h)`.padEnd(37), comparison, mean)
  }
  if (all.length === 0) return lines
  const whole = compared(all)
  row('all, mean over firings', whole, mean)
  row('all, median over firings', whole, middle)
  return lines
}
