import type { Charge } from '../../contract/fold.ts'
import { stateLength } from '../kiln/layout.ts'
import { dryKgAt, toPhysical, unknownCount, valuesLength } from '../kiln/parameters.ts'
import { load, step, type Drive } from '../kiln/step.ts'
import { drawOne, priorOf, wideShare } from './known.ts'
import { fitOfMinute, type Trust } from './likelihood.ts'
import { nextNormal, nextUniform } from './random.ts'
import type { History, Members, Move, Seen } from './shape.ts'
import { beatS, memberCount } from './size.ts'

// The unknowns of a kiln do not change while it burns, but a member that was drawn wrong stays wrong. So members are moved:
// a proposal is made from the difference of two others, run through the whole history from lighting, and taken or left by its fit
// (Metropolis with differential-evolution proposals). Weighted by what came since the last drawing, the members stand for all that was seen.

/** Runs one kiln through beat `beat` of the history and returns what its fit gains. */
export function liveBeat(
  x: Float64Array,
  o: number,
  p: Float64Array,
  q: number,
  history: History,
  seen: readonly Seen[],
  beat: number,
  drive: Drive,
  trust: Trust,
  scratch: Float64Array,
): number {
  drive.fireC = history.fire[beat] as number
  drive.outletC = history.outlet[beat] as number
  drive.air = history.air[beat] as number
  drive.hours = (beat * beatS) / 3600
  step(x, o, p, q, drive, scratch)
  return fitOfMinute(x, o, p[q + dryKgAt] as number, history, seen, beat, trust)
}

/** Makes a proposal for a member. */
export function propose(
  members: Members,
  move: Move,
  member: number,
  known: Float64Array | null,
  charge: Charge,
  coldC: number,
  word: Uint32Array,
): void {
  const n = unknownCount
  let a = Math.floor(nextUniform(word) * memberCount)
  let b = Math.floor(nextUniform(word) * memberCount)
  if (a === member) a = (a + 1) % memberCount
  while (b === member || b === a) b = (b + 1) % memberCount
  const afresh = nextUniform(word) < 0.12
  const leap = nextUniform(word) < 0.1 ? 1 : 0.2 + 0.5 * nextUniform(word)
  const share = nextUniform(word) < 0.5 ? 1 : 0.3
  const isWide = afresh && known !== null && nextUniform(word) < wideShare
  for (let i = 0; i < n; i++) {
    const own = members.latents[member * n + i] as number
    const moves = nextUniform(word) < share
    if (afresh) move.latents[i] = drawOne(known, isWide, i, word)
    else
      move.latents[i] = moves
        ? own + leap * ((members.latents[a * n + i] as number) - (members.latents[b * n + i] as number)) + 0.08 * nextNormal(word)
        : own
  }
  toPhysical(move.latents, 0, charge, move.values, 0)
  load(move.kiln, 0, move.values, 0, coldC)
  move.member = member
  move.beat = 0
  move.lived = 0
  move.fit = 0
  move.afresh = afresh
}

/** The fit above which the proposal would be taken, by the number that will decide. */
export function barOf(members: Members, move: Move, known: Float64Array | null, word: Uint32Array): number {
  const m = move.member
  // a proposal drawn afresh from the prior has the prior in its own favour already
  const prior = move.afresh ? 0 : priorOf(move.latents, 0, known) - priorOf(members.latents, m * unknownCount, known)
  peek[0] = word[0] as number
  return Math.log(nextUniform(peek) + 1e-12) - prior + (members.fits[m] as number)
}

const peek = new Uint32Array(1)

/** Takes or leaves a proposal whose turn has come; one that was not lived to the present has fallen behind. */
export function decide(members: Members, move: Move, known: Float64Array | null, present: number, word: Uint32Array): boolean {
  const m = move.member
  const taken = move.fit > barOf(members, move, known, word) && move.lived === present
  nextUniform(word)
  if (taken) {
    members.latents.set(move.latents, m * unknownCount)
    members.values.set(move.values, m * valuesLength)
    members.kilns.set(move.kiln, m * stateLength)
    members.fits[m] = move.fit
  }
  return taken
}

/** Normalised weights into `into`; returns the effective number of members. */
export function normalise(members: Members, into: Float64Array): number {
  let top = -Infinity
  for (let m = 0; m < memberCount; m++) if ((members.weights[m] as number) > top) top = members.weights[m] as number
  let sum = 0
  for (let m = 0; m < memberCount; m++) {
    into[m] = Math.exp((members.weights[m] as number) - top)
    sum += into[m] as number
  }
  let squares = 0
  for (let m = 0; m < memberCount; m++) {
    into[m] = (into[m] as number) / sum
    squares += (into[m] as number) * (into[m] as number)
  }
  return 1 / squares
}

/** Draws the members anew by weight (systematic), in place: members that are drawn twice overwrite members that are not drawn. */
export function redraw(members: Members, weights: Float64Array, word: Uint32Array): void {
  const counts = new Int32Array(memberCount)
  let sum = 0
  let m = 0
  const u = nextUniform(word)
  for (let k = 0; k < memberCount; k++) {
    const mark = (k + u) / memberCount
    while (m < memberCount - 1 && sum + (weights[m] as number) < mark) sum += weights[m++] as number
    counts[m] = (counts[m] as number) + 1
  }
  let free = 0
  for (let from = 0; from < memberCount; from++) {
    for (; (counts[from] as number) > 1; counts[from] = (counts[from] as number) - 1) {
      while ((counts[free] as number) > 0) free++
      const [n, v, s] = [unknownCount, valuesLength, stateLength]
      members.latents.copyWithin(free * n, from * n, (from + 1) * n)
      members.values.copyWithin(free * v, from * v, (from + 1) * v)
      members.kilns.copyWithin(free * s, from * s, (from + 1) * s)
      members.fits[free] = members.fits[from] as number
      counts[free] = 1
    }
  }
  members.weights.fill(0)
}
