import { stateLength } from '../kiln/layout.ts'
import { toPhysical, unknownCount, valuesLength } from '../kiln/parameters.ts'
import { load, type Drive } from '../kiln/step.ts'
import { drawOne, wideShare } from './known.ts'
import { barOf, decide, liveBeat, normalise, propose, redraw } from './moves.ts'
import { conclude } from './outlook.ts'
import { points, runPoint, startRunOn } from './runon.ts'
import type { Settings } from './settings.ts'
import type { EnsembleState } from './shape.ts'
import { beatS, gridsPerBeat, historyBeats, memberCount } from './size.ts'

// The burning kiln: beats of two minutes for the members, and between them work in equal slices: moves, and the run-on.

const firstMoveBeat = 10
const firstRunBeat = 8
/** The fire and outlet of the last 45 minutes stand for what is to come. */
const lastBeats = 22
const beatsBetweenRuns = 5
/** After so many beats in which no probe spoke there is nothing new to fit: no moves until one speaks, and a run-on now and then. */
const silentAfter = 5
const beatsBetweenSilentRuns = 15
const pointsPerGrid = 2
const everyWide = 1 / wideShare

/** Share of the full draught at each opening: own judgement. */
const letsThrough = { open: 1, half: 0.65, hole: 0.3, closed: 0.05 } as const

function drive(s: EnsembleState): Drive {
  return { fireC: s.airC, ambientC: s.airC, outletC: s.airC, hours: 0, air: 1, seconds: beatS }
}

export function median(a: number[]): number {
  if (a.length === 0) return NaN
  a.sort((x, y) => x - y)
  return a[Math.floor(a.length / 2)] as number
}

/** Median of one channel's row of the beat; NaN without readings. */
export function rowMedian(s: EnsembleState, row: number, filled: number): number {
  const a: number[] = []
  for (let i = 0; i < filled; i++) {
    const v = s.beat[row * gridsPerBeat + i] as number
    if (!Number.isNaN(v)) a.push(v)
  }
  return median(a)
}

export function light(s: EnsembleState): void {
  s.litAt = s.at
  for (let m = 0; m < memberCount; m++) {
    const isWide = m % everyWide === 0
    for (let i = 0; i < unknownCount; i++) s.members.latents[m * unknownCount + i] = drawOne(s.known, isWide, i, s.word)
    toPhysical(s.members.latents, m * unknownCount, s.charge, s.members.values, m * valuesLength)
    load(s.members.kilns, m * stateLength, s.members.values, m * valuesLength, s.airC)
  }
  s.members.fits.fill(0)
  s.members.weights.fill(0)
  s.history.length = 0
  s.move.member = -1
}

/** Closes a beat: history grows, members live it and are weighed. */
export function closeBeat(s: EnsembleState, set: Settings, scratch: Float64Array): void {
  const h = s.history
  const k = h.length
  if (k >= historyBeats) return
  const or = (v: number, last: Float32Array): number => (Number.isNaN(v) ? (k > 0 ? (last[k - 1] as number) : s.airC) : v)
  const fire = rowMedian(s, 0, gridsPerBeat)
  const outlet = rowMedian(s, 2, gridsPerBeat)
  h.fire[k] = or(fire, h.fire)
  h.outlet[k] = or(outlet, h.outlet)
  h.wall[k] = rowMedian(s, 1, gridsPerBeat)
  h.smoke[k] = rowMedian(s, 3, gridsPerBeat)
  s.silent = [h.wall[k], h.smoke[k], fire, outlet].every((v) => Number.isNaN(v)) ? s.silent + 1 : 0
  h.air[k] = Math.min(letsThrough[s.mouth], letsThrough[s.chimney])
  h.length = k + 1
  const d = drive(s)
  const all = s.members
  for (let m = 0; m < memberCount; m++) {
    const gain = liveBeat(all.kilns, m * stateLength, all.values, m * valuesLength, h, s.seen, k, d, set.trust, scratch)
    all.fits[m] = (all.fits[m] as number) + gain
    all.weights[m] = (all.weights[m] as number) + gain
  }
  if (normalise(all, s.weights) < memberCount / 2) {
    redraw(all, s.weights, s.word)
    s.weights.fill(1 / memberCount)
  }
}

/**
 * A slice of the moves. What readings say of a proposal only ever lowers its fit, so one that has fallen below what it would be taken for
 * is not run to the end: it stands until its turn to be decided, and goes on should the bar come down before.
 */
export function move(s: EnsembleState, set: Settings, scratch: Float64Array): void {
  const h = s.history
  if (h.length <= firstMoveBeat || s.silent >= silentAfter) return
  const d = drive(s)
  const mv = s.move
  if (mv.member < 0) propose(s.members, mv, 0, s.known, s.charge, s.airC, s.word)
  for (let left = set.moveSteps; left > 0;) {
    const beats = Math.min(left, h.length - mv.beat)
    mv.beat += beats
    left -= beats
    const bar = barOf(s.members, mv, s.known, s.word)
    while (mv.lived < mv.beat && mv.fit > bar) {
      mv.fit += liveBeat(mv.kiln, 0, mv.values, 0, h, s.seen, mv.lived, d, set.trust, scratch)
      mv.lived++
    }
    if (mv.beat < h.length) return
    s.tried++
    if (decide(s.members, mv, s.known, h.length, s.word)) s.taken++
    propose(s.members, mv, (mv.member + 1) % memberCount, s.known, s.charge, s.airC, s.word)
  }
}

/** A slice of the run-on; a finished one is read and the next begun. */
export function runOn(s: EnsembleState, set: Settings, scratch: Float64Array): void {
  const h = s.history
  const run = s.run
  if (h.length < firstRunBeat) return
  if (run.from < 0 || run.point >= points) {
    if (run.from >= 0 && h.length - run.from < (s.silent < silentAfter ? beatsBetweenRuns : beatsBetweenSilentRuns)) return
    const first = Math.max(0, h.length - lastBeats)
    let fire = 0
    for (let i = first; i < h.length; i++) fire += (h.fire[i] as number) / (h.length - first)
    startRunOn(run, s.members, s.weights, h.length, fire, median([...h.outlet.subarray(first, h.length)]))
  }
  const d = { ...drive(s), air: h.air[h.length - 1] as number }
  for (let k = 0; k < pointsPerGrid && run.point < points; k++) runPoint(run, s.config.worth, d, scratch)
  if (run.point >= points) conclude(s, set)
}
