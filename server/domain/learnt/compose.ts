import type { KeptLesson, Known, Lesson, Prior } from '../../contract/learnt.ts'

// The lessons of the last firings of one kiln, put together into what the next one begins with.

/** So many firings count, and each older one so much less. */
export const lastFirings = 6
const agedBy = 0.8

/** @param kept lessons of one kiln since it was last made to forget, in any order */
export function priorFrom(kept: readonly KeptLesson[]): Prior | undefined {
  const newestFirst = [...kept].sort((a, b) => b.at - a.at)
  const unknowns = unknownsFrom(lastOf(newestFirst, 'burn'))
  const stop = stopFrom(lastOf(newestFirst, 'stop'))
  const hours = hoursFrom(lastOf(newestFirst, 'hours'))
  const nights = lastOf(newestFirst, 'night').map(({ conditions, warmthK }) => ({ conditions, warmthK }))
  if (unknowns === undefined && stop === undefined && hours === undefined && nights.length === 0) return undefined
  return {
    firings: new Set(kept.map(({ firing }) => firing)).size,
    ...(unknowns === undefined ? {} : { unknowns }),
    ...(stop === undefined ? {} : { stop }),
    ...(hours === undefined ? {} : { hours }),
    ...(nights.length === 0 ? {} : { night: nights }),
  }
}

/** The lessons of one part, newest first, one a firing. */
export function lastOf<P extends Lesson['part']>(newestFirst: readonly KeptLesson[], part: P): Extract<Lesson, { part: P }>[] {
  const byFiring = new Map<string, Extract<Lesson, { part: P }>>()
  for (const { firing, lesson } of newestFirst)
    if (lesson.part === part && !byFiring.has(firing)) byFiring.set(firing, lesson as Extract<Lesson, { part: P }>)
  return [...byFiring.values()].slice(0, lastFirings)
}

/** Own judgement, in spreads of the wide prior: how far the same kiln differs from day to day before several days have shown it, and at least. */
const usualBetween = 0.35
const leastSd = 0.25

/** Spread within the firings and between them. */
export function together(newestFirst: readonly Known[]): Known {
  let [all, mean, within] = [0, 0, 0]
  let weight = 1
  for (const { mean: m, sd } of newestFirst) {
    all += weight
    mean += weight * m
    within += weight * sd * sd
    weight *= agedBy
  }
  mean /= all
  within /= all
  // one firing says nothing of the spread between firings, several say more and more
  let between = usualBetween * usualBetween
  let counted = 1
  weight = 1
  for (const { mean: m } of newestFirst.slice(0, newestFirst.length > 1 ? undefined : 0)) {
    between += weight * (m - mean) * (m - mean)
    counted += weight
    weight *= agedBy
  }
  const sd = Math.sqrt(within + between / counted)
  return { mean: rounded(mean), sd: rounded(Math.min(1, Math.max(leastSd, sd))) }
}

function unknownsFrom(burns: readonly Extract<Lesson, { part: 'burn' }>[]): Record<string, Known> | undefined {
  const newest = burns[0]
  if (newest === undefined) return undefined
  const known: Record<string, Known> = {}
  for (const name of Object.keys(newest.unknowns)) {
    const told = burns.flatMap(({ unknowns }) => unknowns[name] ?? [])
    known[name] = together(told)
  }
  return known
}

/** Of the wall at the stop, K: from firing to firing in one kiln (64 simulated firings), and how far a smoke probe's own call was off (ten). */
const stopBetweenK = 30
const stopWithinK = 30

function stopFrom(stops: readonly Extract<Lesson, { part: 'stop' }>[]): Known | undefined {
  let [all, mean, weight] = [0, 0, 1]
  for (const { wallC } of stops) {
    const share = weight / (stopBetweenK * stopBetweenK + stopWithinK * stopWithinK)
    all += share
    mean += share * wallC
    weight *= agedBy
  }
  return all === 0 ? undefined : { mean: rounded(mean / all), sd: rounded(Math.sqrt(stopBetweenK * stopBetweenK + 1 / all)) }
}

/**
 * Of the logarithm of the hours to the stop, from firing to firing in one kiln, with what the calls were off by: chosen on 42 simulated firings,
 * 0.25 nearly alike. The true stops of one kiln lie 0.24 apart, those of all kilns 0.39.
 */
const hoursSpread = 0.35

function hoursFrom(told: readonly Extract<Lesson, { part: 'hours' }>[]): Known | undefined {
  let [all, mean, weight] = [0, 0, 1]
  for (const { toStop } of told) {
    all += weight
    mean += weight * Math.log(toStop)
    weight *= agedBy
  }
  return all === 0 ? undefined : { mean: rounded(mean / all), sd: rounded(hoursSpread * Math.sqrt(1 + 1 / all)) }
}

const rounded = (value: number): number => Math.round(value * 1000) / 1000
