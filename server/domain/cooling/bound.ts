import { outputsOf, type Network } from '../estimate/learned/network.ts'
import { mean } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import { coldestK, coreSigns, nowK, softK } from './signs.ts'
import { hotAfterAll } from './tables/hot-after-all.ts'
import { hotBesideCore } from './tables/hot-beside-core.ts'
import { hottestOver } from './tables/hottest-over.ts'
import { hottestOverCore } from './tables/hottest-over-core.ts'
import type { Cooling } from './state.ts'

/**
 * So many spreads over the middle of what was learnt. Between the limit of opening and where it is unsafe, 5 K higher, lie two spreads more.
 * Beside it stands a rule by hand: either alone was wrong in nights where the other was not.
 */
const spreads = 4
/** The same over a probe in the middle of the charge; chosen on nights that neither taught nor are reported. */
const coreSpreads = 2.25
/** The wall still has a say beside it: a core probe that slipped out is as cool as the air. */
const wallSpreads = 2
// The rule by hand, by how warm the wall was at sealing (a cold place of the drum sees less of the heat): of 2,000 simulated nights of three
// kilns of other hands three in a thousand lay higher than a share of 1.82 at 200 K; beside what was learnt 0.6 of it is enough.
const shareAt200K = Math.exp(0.6)
const besideLearnt = 0.6
const shareFalls = 0.54
/** A wall that lost more than half of itself in four hours runs ahead of the charcoal. */
const aheadFrom = 0.75
const aheadGrows = 2.1
const aheadMost = 0.42
/** A wall that rose by more than a seventh in its last hour is ahead of parts that are still raw, wet and slow to cool. */
const risingUnder = 0.85
/** Refining ends near 700 °C, charring near 500 (trade facts 1.1.14). */
const refinedGrows = 1.45
/** What burnt elsewhere is hotter than the share knows. Own judgement. */
const burntGrows = 1.3
/** Offset of a wall probe against that of the air, and drift, K: with the cold start known, and without. */
const wallErrorK = 3
const wallErrorUnknownK = 5
/** So near to the air the wall tells nothing more, K. */
const wallLeastK = 2.5

function byHand(cooling: Cooling, look: Look, wallK: number, part: number): number {
  const first = Math.max(40, cooling.firstK ?? 100)
  const later = cooling.points[24] ?? cooling.points[25] ?? cooling.points[26] ?? null
  const ahead = later === null ? 0 : Math.min(aheadMost, Math.max(0, Math.log(first / Math.max(1, later)) - aheadFrom))
  const share =
    part *
    shareAt200K *
    Math.exp(shareFalls * Math.log(200 / first)) *
    Math.exp(aheadGrows * ahead + Math.max(0, risingUnder - (cooling.before.hourShare ?? 1))) *
    (look.facts.refinedAt === null ? 1 : refinedGrows) *
    (cooling.burnt ? burntGrows : 1)
  const wall = Math.max(wallLeastK, wallK) + (cooling.before.coldKnown ? wallErrorK : wallErrorUnknownK)
  return wall * Math.max(1, share)
}

/** K over the limit of opening. */
const nearLimitK = 5

/** Kilns of another hand differ by more than those that taught: ten nights of one raw charge lay eleven of their own small spreads off. */
const leastSpread = 0.07

/** Of the softened logarithm of hottest part over wall: its middle, and its spread. */
export interface Guess {
  middle: number
  spread: number
}

const average = (networks: readonly Network[], signs: readonly number[]): number[] => {
  const outs = networks.map((network) => outputsOf(network, signs))
  return (outs[0] ?? []).map((_, k) => outs.reduce((sum, out) => sum + (out[k] ?? 0), 0) / outs.length)
}

export function guessOf(networks: readonly Network[], signs: readonly number[]): Guess {
  const [middle = 0, logSpread = 0] = average(networks, signs)
  return { middle, spread: Math.max(leastSpread, Math.exp(Math.min(1, logSpread))) }
}

/** Upper bound of the hottest part, °C, and the logarithm of the odds that it is hot or burns after all; null where nothing is to be said. */
export interface Bound {
  hottestC: number | null
  hotOdds: number | null
}

export const unbound: Bound = { hottestC: null, hotOdds: null }

/** What was learnt of the hottest part over one probe. */
interface Learnt {
  guess: Guess
  /** The probe over what the cover felt, K. */
  overK: number
  signs: readonly number[]
  after: readonly Network[]
}

const upperC = ({ guess, overK }: Learnt, felt: number, over: number): number =>
  felt + (Math.max(coldestK, overK) + softK) * Math.exp(guess.middle + over * guess.spread) - softK

function oddsOf({ guess, overK, signs, after }: Learnt, felt: number, limitC: number): number | null {
  const room = roomOf(guess, overK, felt, limitC)
  return average(after, [...signs, room, Math.log(guess.spread)])[0] ?? null
}

/** `signs` null: too early for what was learnt, the rule by hand stands alone. */
export function boundOf(cooling: Cooling, look: Look, felt: number, signs: readonly number[] | null): Bound {
  const wall = nowK(cooling.points)
  if (wall === null) return unbound
  const core = mean(look.past.core, 10) ?? -273
  if (signs === null) return { hottestC: Math.max(felt + byHand(cooling, look, wall, 1), core), hotOdds: null }
  const overWall: Learnt = { guess: guessOf(hottestOver, signs), overK: wall, signs, after: hotAfterAll }
  const overCore = besideCore(cooling, signs)
  const hottestC =
    overCore === null
      ? Math.max(upperC(overWall, felt, spreads), felt + byHand(cooling, look, wall, besideLearnt), core)
      : Math.max(upperC(overCore, felt, coreSpreads), upperC(overWall, felt, wallSpreads), core)
  const { openHottestC } = look.config.limits
  // far over the limit nobody looks twice
  const hotOdds = hottestC > openHottestC + nearLimitK ? null : oddsOf(overCore ?? overWall, felt, openHottestC)
  return { hottestC, hotOdds }
}

/** Null where no core probe is heard, or one that hangs outside: then the wall alone is asked. */
function besideCore(cooling: Cooling, night: readonly number[]): Learnt | null {
  const signs = coreSigns(cooling, night)
  const overK = nowK(cooling.corePoints)
  if (cooling.coreOff || signs === null || overK === null) return null
  return { guess: guessOf(hottestOverCore, signs), overK, signs, after: hotBesideCore }
}

/** How far a hottest part at `limitC` would lie above the middle, in spreads: what the second look at a night is told of the first. */
export function roomOf(guess: Guess, overK: number, felt: number, limitC: number): number {
  const limit = Math.log((Math.max(0, limitC - felt) + softK) / (Math.max(coldestK, overK) + softK))
  return Math.min(8, Math.max(-6, (limit - guess.middle) / guess.spread))
}
