import type { Ms, Reason } from '../../contract/fold.ts'
import type { Opened } from './opened.ts'

/**
 * The sealed kiln, one point every ten minutes: the wall over the air that its cover has felt. Wall and charcoal fall together, the hottest part
 * hotter by a share that hardly changes; so the wall alone bounds the hottest part once that share is bounded.
 */
export interface Cooling {
  sealedAt: Ms
  /** The air as the earth over the drum has felt it, °C: what the wall falls towards. Null until the air is known. */
  feltC: number | null
  /** The same with a shorter and a longer memory, °C: earth of other thickness. */
  quickFeltC: number | null
  slowFeltC: number | null
  /** When the air was last known. */
  airAt: Ms | null
  /** Wall when it was sealed, °C, and over the air, K; null until they are known. */
  firstWallC: number | null
  firstK: number | null
  /** The same every ten minutes from the seal on; null in gaps. */
  points: (number | null)[]
  /** The middle of the charge over the same, K, where a probe sits in it; null in gaps. */
  corePoints: (number | null)[]
  lowestK: number | null
  /** Lowest of the wall over the air of the moment, K. */
  lowestBesideK: number | null
  /** Lowest of the other sealed-side probes since an hour after sealing, °C. */
  wallLowC: number | null
  fireboxLowC: number | null
  /** Lowest of the firebox over the air of the moment, K. */
  fireboxLowBesideK: number | null
  coreLowC: number | null
  rose: Reason[] | null
  slow: Reason[] | null
  relit: Reason[] | null
  /** What showed it, at any time of this night: a fire that came back makes its own night, and what was learnt knows none. */
  hasRelit: Reason[] | null
  /** Null while it is shut. */
  opened: Opened | null
  /** What has risen since it was opened, while it is open. */
  burnsOpen: Reason[] | null
  /** The wall over what its cover felt at the edges of `falls.ts` that are past, K; null in gaps. */
  warmthK: (number | null)[]
  /** How many spreads it falls slower than a tight night of this kiln, at the last edge and at most; null where that tells nothing. */
  leakZ: number | null
  mostLeakZ: number
  /** Told from it. */
  fallsSlow: boolean
  /** Logarithm of the odds that something burns, from the last three hours alone; null where they tell nothing. */
  leakSign: number | null
  /** Slower than its own last three hours promise: no news yet, and no leave to open. */
  dawdles: Reason[] | null
  /** The wall fell slower than promised at some time of this night: something burnt, perhaps where the probe sees little of it. */
  burnt: boolean
  /** At some time of this night it was told as slow or rising: it is none to compare others with. */
  told: boolean
  /** So near to the air as it is, it falls too slowly for a kiln that only cools. */
  lingers: Reason[] | null
  /** The wall fell faster than any sealed drum under earth, or was never warm beside a hot fire: its probe tells nothing of the inside. */
  wallOff: Reason[] | null
  /** At some time of this night the wall fell so fast that its probe may be losing touch, or runs ahead of the charcoal. */
  fast: Reason[] | null
  before: Before
  /** Since when everything that opening asks for has held. */
  fitSince: Ms | null
  doubts: Reason[]
  /** Logarithm of the odds that it is hot, or burns where the wall sees little of it, for all that the bound says; null where nothing can be said. */
  hotOdds: number | null
  /** At some time of this night it was cooler than any charcoal beside such a wall. */
  coreOff: boolean
  hottestC: number | null
}

/** What was known when the kiln was sealed. */
export interface Before {
  /** Share of its warmth that the wall had already an hour, and three, before: where it rose until then, other parts lag behind it. */
  hourShare: number | null
  threeHoursShare: number | null
  fireC: number | null
  smokeC: number | null
  burntH: number
  /** Dry wood that was loaded, kg, where it was weighed. */
  woodKg: number | null
  coldKnown: boolean
}

export function startCooling(sealedAt: Ms): Cooling {
  return {
    sealedAt,
    feltC: null,
    quickFeltC: null,
    slowFeltC: null,
    airAt: null,
    firstWallC: null,
    firstK: null,
    points: [],
    corePoints: [],
    lowestK: null,
    lowestBesideK: null,
    wallLowC: null,
    fireboxLowC: null,
    fireboxLowBesideK: null,
    coreLowC: null,
    rose: null,
    slow: null,
    relit: null,
    hasRelit: null,
    opened: null,
    burnsOpen: null,
    warmthK: [],
    leakZ: null,
    mostLeakZ: 0,
    fallsSlow: false,
    leakSign: null,
    dawdles: null,
    burnt: false,
    told: false,
    lingers: null,
    wallOff: null,
    fast: null,
    before: { hourShare: null, threeHoursShare: null, fireC: null, smokeC: null, burntH: 9, woodKg: null, coldKnown: false },
    fitSince: null,
    doubts: [],
    hotOdds: null,
    coreOff: false,
    hottestC: null,
  }
}

/** What the probes showed while the kiln was cold, before lighting: it takes out how the wall probe differs from that of the air. */
export interface ColdStart {
  wallOverAirK: number | null
}
