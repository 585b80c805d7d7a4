import type { Reason } from '../../contract/fold.ts'
import { mean, slope } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import { airC, airIsOld } from './fit.ts'
import type { Cooling } from './state.ts'

const hourMs = 3_600_000
/** Everything must hold together for so long, and longer for each probe (core, air) that is missing: common practice, no source. */
const holdMs = hourMs / 3
const doubtMs = hourMs / 6
/** Sealed-side probes count as near the air within this, K. The wall has its own, stricter bound. */
const nearK = 20
/** How far the model's 99.9 % bound lies above what its kilns really had, K (trials: 3 to 50). */
const modelDoubtK = 60

/** Logarithm of the odds that it is hot after all from which the call waits. `npm run sealed` prints what it costs. */
const hotFrom = -5.5

/** So much sooner the call comes with a core probe, h: in the nights that are called without one too (`npm run sealed`, with and without `--core`). */
const coreEarnsH = 2

export interface OpenJudgement {
  due: boolean
  because: Reason[]
  /** What still speaks against it. */
  unless: Reason[]
}

/** `npm run sealed` holds it to account. The safety call. Every ten minutes while sealed: each condition by itself, and all of them for a while. */
export function judgeOpen(cooling: Cooling, look: Look, modelUpperC: number | null, modelLeak: boolean): OpenJudgement {
  const { openHottestC, openMinimumWaitH } = look.config.limits
  const air = airC(look)
  const because: Reason[] = []
  const unless: Reason[] = []
  const put = (holds: boolean, reason: Reason): void => void (holds ? because : unless).push(reason)
  const sealedH = (look.at - cooling.sealedAt) / hourMs
  put(sealedH >= openMinimumWaitH, { code: 'sealed-for', value: sealedH, limit: openMinimumWaitH })
  const bound = cooling.hottestC
  if (bound === null) unless.push({ code: 'hottest-unknown' })
  else put(bound < openHottestC, { code: 'hottest-below', value: bound, limit: openHottestC })
  // the model's own bound is wide; it has a veto where it is clearly hot, and nothing to add where the other speaks against it
  if (modelUpperC !== null && bound !== null && bound < openHottestC)
    put(modelUpperC < openHottestC + modelDoubtK, { code: 'model-hottest', value: modelUpperC, limit: openHottestC + modelDoubtK })
  for (const role of ['firebox', 'smoke', 'core'] as const) {
    const value = mean(look.past[role], 20)
    if (value === null || air === null) continue
    // what stands in the charcoal has the hottest part bounded over it; in a cold night 20 K over the air came three hours later
    const limit = role === 'core' ? openHottestC : Math.min(openHottestC, air.value + nearK)
    put(value < limit, { code: `${role}-near-air`, value, limit })
  }
  const rate = slope(look.past.wall, 120)
  const airRate = slope(look.past.ambient, 120) ?? slope(look.past.outlet, 120) ?? 0
  if (rate === null || wallLost(look)) unless.push({ code: 'wall-unknown' })
  else put(rate <= Math.max(0.5, airRate + 0.5), { code: 'wall-falling', value: rate })
  // until it is closed anew and logged as sealed, which begins another night
  const rose = cooling.rose ?? cooling.hasRelit ?? null
  put(rose === null, rose?.[0] ?? { code: 'no-rise' })
  const burns = burning(cooling, modelLeak)
  put(burns === null, burns ?? { code: 'no-leak' })
  if (cooling.lingers !== null) unless.push(...cooling.lingers)
  if (cooling.wallOff !== null) unless.push(...cooling.wallOff)
  cooling.doubts = cooling.wallOff === null ? [] : [...cooling.wallOff]
  if (mean(look.past.core, 20) === null || cooling.coreOff)
    cooling.doubts.push(...(cooling.fast ?? []), { code: 'no-core-probe', value: coreEarnsH })
  if (air?.measured !== true) cooling.doubts.push({ code: 'no-air-probe' })
  const holds = unless.length === 0
  cooling.fitSince = holds ? (cooling.fitSince ?? look.at) : null
  const hold = holdMs + doubtMs * cooling.doubts.length
  return { due: cooling.fitSince !== null && look.at - cooling.fitSince >= hold, because, unless }
}

/** What says that air gets in or that something burns: the fall of the wall, the model, the night's course; null where nothing does. */
function burning({ slow, dawdles, hotOdds }: Cooling, modelLeak: boolean): Reason | null {
  const slowly = slow ?? dawdles
  if (slowly !== null) return slowly[0] ?? { code: 'cools-slower' }
  if (modelLeak) return { code: 'model-says-leak' }
  return hotOdds !== null && hotOdds > hotFrom ? { code: 'may-burn-unseen' } : null
}

/** Of the last half hour so little came of the wall that nobody watches it. Own judgement. */
const wallLost = (look: Look): boolean => mean(look.past.wall, 30) === null

/** A due opening rests on the wall and on the air: null while both are heard. What was opened is not closed again for a probe that was put away. */
export function lostGround(cooling: Cooling, look: Look): Reason[] | null {
  if (wallLost(look)) return [{ code: 'wall-unknown' }]
  return airIsOld(cooling, look) ? [{ code: 'hottest-unknown' }] : null
}

/** A due opening is taken back on any rise, or when the bound is clearly over its limit again. */
export function mustWithdraw(cooling: Cooling, look: Look): Reason[] | null {
  if (cooling.burnsOpen !== null) return cooling.burnsOpen
  if (cooling.rose !== null) return cooling.rose
  if (cooling.wallOff !== null) return cooling.wallOff
  if (cooling.slow !== null || cooling.dawdles !== null) return cooling.slow ?? cooling.dawdles
  const limit = look.config.limits.openHottestC + 3
  return cooling.hottestC !== null && cooling.hottestC > limit ? [{ code: 'hottest-over', value: cooling.hottestC, limit }] : null
}
