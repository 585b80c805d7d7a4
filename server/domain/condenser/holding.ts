import { mean } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'

/** How long wetted cloths hold at this load. A wetting that soon gives way has not soaked them. */
export interface Holding {
  /** The coolest since the wetting that is being looked at, °C; null before it is felt. */
  lowC: number | null
  /** It has given way. */
  gaveWay: boolean
  /** How long the last ones held, min. */
  lastsMin: number[]
  /** This one gave way much sooner than those before, and neither smoke nor fire says why. */
  isShort: boolean
}

export function startHolding(): Holding {
  return { lowC: null, gaveWay: false, lastsMin: [], isShort: false }
}

/** Water is felt from here on, and a climb may begin, min after the wetting. From trials, no source. */
const feltMin = 2
const soonestMin = 3
/** A wetting has given way once the outlet stands so far over the coolest after it, K. From trials, no source. */
const climbsK = 6
/** Short is half of what is usual here, where that is a time that can be halved. From trials, no source. */
const short = { share: 0.5, usualMin: 12, known: 2 } as const
/** More smoke over eight minutes, or more fire over six, than this lifts the outlet over wet cloths too, K. From trials, no source. */
const moreSmokeK = 10
const moreFireK = 15
const lastsKept = 6

export function wettedAnew(holding: Holding): void {
  holding.lowC = null
  holding.gaveWay = false
  holding.isShort = false
}

/** Once a minute. @param sinceMin minutes since the cloths were last wetted */
export function stepHolding(holding: Holding, { past }: Look, sinceMin: number): void {
  const now = mean(past.outlet, 1)
  if (now === null || sinceMin < feltMin) return
  holding.lowC = Math.min(holding.lowC ?? now, now)
  if (holding.gaveWay || sinceMin < soonestMin || now < holding.lowC + climbsK) return
  holding.gaveWay = true
  holding.isShort = isShort(holding.lastsMin, sinceMin) && !rises(past.smoke, 8, moreSmokeK) && !rises(past.firebox, 6, moreFireK)
  holding.lastsMin = [...holding.lastsMin, sinceMin].slice(-lastsKept)
}

function isShort(lastsMin: readonly number[], min: number): boolean {
  const usual = [...lastsMin].sort((a, b) => a - b)[lastsMin.length >> 1] ?? 0
  return lastsMin.length >= short.known && usual >= short.usualMin && min <= short.share * usual
}

function rises(history: Look['past']['smoke'], minutes: number, byK: number): boolean {
  const now = mean(history, 2)
  const before = mean(history, 2, minutes)
  return now !== null && before !== null && now - before > byK
}
