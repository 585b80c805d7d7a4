import { defaultKilnConfig } from '../../../../server/contract/kiln-defaults.ts'
import { coolingStepMs, stepCooling } from '../../../../server/domain/cooling/fit.ts'
import { startCooling, type Cooling } from '../../../../server/domain/cooling/state.ts'
import { judgeOpen, mustWithdraw } from '../../../../server/domain/cooling/open.ts'
import { noFacts } from '../../../../server/domain/firing/facts.ts'
import { emptyHistory, write } from '../../../../server/domain/firing/history.ts'
import type { Look } from '../../../../server/domain/firing/look.ts'
import { roles, type Role } from '../../../../server/contract/vocabulary.ts'

/** A sealed kiln of three numbers, for tests: it shares nothing with the model in the domain. Temperatures °C and K, times h. */
export interface SealedKiln {
  /** Hottest part over the air at the seal, K. */
  hottestK: number
  /** Share of that which the wall shows in the end, and how much more it shows while the fire has just stopped. */
  wallShare: number
  wallLead: number
  tauH: number
  airMeanC: number
  airSwingK: number
  /** The wall probe reads off by so much, before lighting and after. */
  wallOffK: number
  noiseK: number
  /** Heat of a leak, as the temperature it holds the hottest part above the air, K; it begins after `leakFromH`. */
  leakK: number
  leakFromH: number
  ambientProbe: boolean
  /** The wall probe comes off so many hours after sealing and shows this share of what it showed, over the air. */
  off?: { fromH: number; keeps: number }
  /** Firebox at the seal, °C; without it that of a kiln whose fire has just been shut in. */
  fireboxC?: number
  /** The kiln's own limit for the hottest part, °C. */
  limitC?: number
}

export const tightKiln: SealedKiln = {
  hottestK: 400,
  wallShare: 0.7,
  wallLead: 0.15,
  tauH: 7.5,
  airMeanC: 24,
  airSwingK: 4,
  wallOffK: 0,
  noiseK: 0.5,
  leakK: 0,
  leakFromH: 2,
  ambientProbe: true,
}

/** Uniform numbers from a seed (mulberry32). */
export function dice(seed: number): () => number {
  let a = seed >>> 0
  return () => {
    a = (a + 0x6d2b79f5) >>> 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

export interface SealedRun {
  /** Hours after sealing: the first due open call, and when the hottest part fell below 50 and 45 for good; null when never. */
  openH: number | null
  /** How long all had held by then, h. */
  heldH: number | null
  withdrawn: boolean
  below50H: number | null
  below45H: number | null
  leakToldH: number | null
  cooling: Cooling
  /** As it was looked at last. */
  look: Look | null
}

const sealedAt = Date.UTC(2026, 2, 1, 16)
const minuteMs = 60_000

/** Runs the rules on a sealed kiln from the seal on, minute by minute. */
export function runSealed(kiln: SealedKiln, hours: number, seed: number): SealedRun {
  const random = dice(seed)
  const noise = (): number => (random() + random() + random() - 1.5) * 2 * kiln.noiseK
  const past = Object.fromEntries(roles.map((role) => [role, emptyHistory()])) as Record<Role, ReturnType<typeof emptyHistory>>
  const facts = { ...noFacts(), litAt: sealedAt - 10 * 3_600_000, sealedAt }
  const cooling = startCooling(sealedAt)
  const run: SealedRun = {
    openH: null,
    heldH: null,
    withdrawn: false,
    below50H: null,
    below45H: null,
    leakToldH: null,
    cooling,
    look: null,
  }
  const base = defaultKilnConfig()
  const config = { ...base, limits: { ...base.limits, openHottestC: kiln.limitC ?? base.limits.openHottestC } }
  let over = kiln.hottestK
  let firebox = kiln.fireboxC ?? 600
  for (let m = 0; m <= hours * 60; m++) {
    const h = m / 60
    const air = kiln.airMeanC + kiln.airSwingK * Math.sin(((h - 18) / 24) * 2 * Math.PI)
    const hold = h >= kiln.leakFromH ? kiln.leakK : 0
    over += ((hold - over) / kiln.tauH) * (1 / 60)
    firebox += ((air - firebox) / 1.6) * (1 / 60)
    const share = kiln.wallShare * (1 + kiln.wallLead * Math.exp(-h / 1.2))
    const at = sealedAt + m * minuteMs
    const touch = kiln.off !== undefined && h >= kiln.off.fromH ? kiln.off.keeps : 1
    write(past.wall, at, air + over * share * touch + kiln.wallOffK + noise())
    write(past.firebox, at, firebox + noise())
    write(past.outlet, at, air + 0.3 + noise())
    write(past.ambient, at, kiln.ambientProbe ? air + noise() : null)
    const hottest = air + over
    if (hottest >= 50) run.below50H = null
    else run.below50H ??= h
    if (hottest >= 45) run.below45H = null
    else run.below45H ??= h
    if (m % (coolingStepMs / minuteMs) !== 0) continue
    const look: Look = { at, now: {}, past, facts, config, litAt: facts.litAt }
    run.look = look
    stepCooling(cooling, look, { wallOverAirK: kiln.wallOffK })
    if (judgeOpen(cooling, look, null, false).due && run.openH === null) {
      run.openH = h
      run.heldH = (at - (cooling.fitSince ?? at)) / 3_600_000
    }
    if (run.openH !== null && mustWithdraw(cooling, look) !== null) run.withdrawn = true
    if (cooling.rose !== null || cooling.slow !== null) run.leakToldH ??= h
  }
  return run
}

/** Kilns over the whole range that the recorded practice firings showed (hottest part 330 to 490 K as the wall's straight line reaches back). */
export function anyKiln(seed: number): SealedKiln {
  const random = dice(seed * 7919 + 1)
  const between = (low: number, high: number): number => low + (high - low) * random()
  const wallLead = between(0, 0.35)
  const leaks = random() < 0.4
  return {
    hottestK: between(300, 490) / (1 + wallLead),
    wallShare: between(0.5, 1),
    wallLead,
    tauH: between(5, 11),
    airMeanC: between(8, 32),
    airSwingK: between(1, 8),
    wallOffK: between(-4, 4),
    noiseK: between(0.2, 1),
    leakK: leaks ? between(20, 400) : 0,
    leakFromH: between(0, 12),
    ambientProbe: random() < 0.5,
  }
}
