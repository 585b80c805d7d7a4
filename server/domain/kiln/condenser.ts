import { airPressureKPa, humidity, saturationKPa, steamAtZeroKJ, steamCp, waterCp } from './water.ts'

// The condenser by heat balance: a pipe under cloths that are wet or dry, gas and vapour inside.

/** What enters the pipe, kg/s and °C. */
export interface PipeFlow {
  smokeC: number
  dryGas: number
  steam: number
  organics: number
}

export interface Cloths {
  /** kW/K of the whole pipe: four metres of 12 cm pipe, 1.5 m2 (trade facts 8.4). Dry: air alone, 10 W/(m2 K). Wet: evaporation, 45 W/(m2 K). */
  dryKWK: number
  wetKWK: number
  /** Water they can hold, kg. */
  holdsKg: number
}

export const usualCloths: Cloths = { dryKWK: 0.015, wetKWK: 0.07, holdsKg: 1.5 } // own judgement

const gasCp = 1.05
const organicCp = 1.5
const organicLatent = 450 // kJ/kg, trade facts 8.13
const evaporationKJ = 2430 // kJ/kg at 30 °C, instrument facts 8.1
const evaporatedShare = 0.75 // of the heat through wet cloths; the rest warms the air (own judgement)

/** Enthalpy of the stream at a temperature at which its vapour is at most saturated, kW. */
function enthalpy(flow: PipeFlow, t: number): number {
  const most = flow.dryGas * humidity(Math.min(0.97 * airPressureKPa, saturationKPa(t)))
  const steam = Math.min(flow.steam, most)
  const liquid = flow.steam - steam
  const asVapour = flow.steam > 0 ? steam / flow.steam : 0
  return (
    flow.dryGas * gasCp * t +
    steam * (steamAtZeroKJ + steamCp * t) +
    liquid * waterCp * t +
    flow.organics * (organicCp * t + organicLatent * asVapour)
  )
}

/** How wet cloths cool: between dry (0) and soaked (1), falling off as the last fifth dries. */
export function wetness(waterKg: number, cloths: Cloths): number {
  return waterKg / (waterKg + 0.1 * cloths.holdsKg)
}

/**
 * Outlet temperature, heat given off (kW) and water condensed (kg/s) of a pipe in steady state.
 * The mean of the two ends drives the heat, the cool end counting more, since condensing holds most of the pipe near its outlet.
 */
export function condense(
  flow: PipeFlow,
  airC: number,
  waterKg: number,
  cloths: Cloths,
): { outletC: number; heatKW: number; waterKgS: number; driedKgS: number } {
  const wet = wetness(waterKg, cloths)
  const conductance = cloths.dryKWK + (cloths.wetKWK - cloths.dryKWK) * wet
  const inside = enthalpy(flow, flow.smokeC)
  let low = Math.min(airC, flow.smokeC)
  let high = flow.smokeC
  for (let k = 0; k < 30; k++) {
    const t = (low + high) / 2
    const given = inside - enthalpy(flow, t)
    const taken = conductance * (0.35 * flow.smokeC + 0.65 * t - airC)
    if (given > taken) low = t
    else high = t
  }
  const outletC = (low + high) / 2
  const heatKW = inside - enthalpy(flow, outletC)
  const left = flow.dryGas * humidity(Math.min(0.97 * airPressureKPa, saturationKPa(outletC)))
  return { outletC, heatKW, waterKgS: Math.max(0, flow.steam - left), driedKgS: (evaporatedShare * wet * heatKW) / evaporationKJ }
}
