import type { KilnConfig, Ms } from '../../contract/fold.ts'
import { highest, mean } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'

/**
 * The heat that went in, as far as three probes tell: the integral of firebox minus outlet, in K·h.
 * On simulated firings it told most of when the acids come and go, per mass of the charge.
 */
export interface Heat {
  /** Since lighting, K·h. */
  sumKh: number
  /** Since the wall passed 100 °C, K·h. */
  since100Kh: number
  wall100At: Ms | null
  wall160At: Ms | null
  /** Highest 40-minute mean of the outlet over ambient (or over its own coolest), K: the load that the condenser carried. */
  peakLoadK: number
  coolestOutletC: number | null
}

export function startHeat(): Heat {
  return { sumKh: 0, since100Kh: 0, wall100At: null, wall160At: null, peakLoadK: 0, coolestOutletC: null }
}

/** A 200-litre drum of air-dry wood: common practice, no source. Assumed where nobody weighed, and said. */
const drumKg = 75
const drumMoisturePct = 25

export interface ChargeMass {
  wetKg: number
  dryKg: number
  assumed: boolean
}

export function chargeMass(config: KilnConfig, charge: KilnConfig['charge']): ChargeMass {
  const massKg = charge.massKg ?? config.charge.massKg
  const moisturePct = charge.moisturePct ?? config.charge.moisturePct ?? drumMoisturePct
  const wetKg = massKg ?? (drumKg * config.volumeL) / 200
  return { wetKg, dryKg: wetKg * (1 - moisturePct / 100), assumed: massKg === undefined }
}

/** One minute. A gap of the firebox is bridged with its last ten minutes. */
export function stepHeat(heat: Heat, look: Look): void {
  const firebox = mean(look.past.firebox, 1) ?? mean(look.past.firebox, 10)
  const outlet = mean(look.past.outlet, 1) ?? mean(look.past.outlet, 10) ?? look.now.ambient ?? 30
  const wall = mean(look.past.wall, 10)
  if (wall !== null && wall >= 100) heat.wall100At ??= look.at
  if (wall !== null && wall >= 160) heat.wall160At ??= look.at
  if (firebox !== null) {
    const gained = Math.max(0, firebox - outlet) / 60
    heat.sumKh += gained
    if (heat.wall100At !== null) heat.since100Kh += gained
  }
  const cool = mean(look.past.outlet, 10)
  if (cool !== null && (heat.coolestOutletC === null || cool < heat.coolestOutletC)) heat.coolestOutletC = cool
  const load = condenserLoadK(heat, look)
  if (load !== null) heat.peakLoadK = Math.max(heat.peakLoadK, load)
}

/** Outlet over the air, mean of 40 minutes so that wet and dry cloths even out, K. */
export function condenserLoadK(heat: Heat, look: Look): number | null {
  const outlet = mean(look.past.outlet, 40)
  const air = mean(look.past.ambient, 40) ?? heat.coolestOutletC
  return outlet === null || air === null ? null : outlet - air
}

/** The fire burns and was not falling away: without it no heat of the past counts as a firing that caught. */
export function fireHolds(look: Look): boolean {
  const firebox = mean(look.past.firebox, 20)
  const earlier = highest(look.past.firebox, 60)
  if (firebox === null) return true
  return firebox >= look.config.limits.fireLowC && (earlier === null || firebox > earlier - 200)
}
