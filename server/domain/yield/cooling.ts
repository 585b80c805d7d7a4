import type { Range } from '../../contract/plan.ts'

// Heat that the condenser must take away, from what a kilogram of dry wood sends through it.
// Shares and latent heats: measured liquid of 44 to 47 % and gas of 20 to 30 % of dry wood; water 2257 kJ/kg, mixed organics 450 kJ/kg.
const waterKgPerKg = 0.45
const organicsKgPerKg = 0.15
/** A tight retort sends little gas, a drum with some firebox air much more. */
const gasKgPerKg = { low: 0.25, high: 1.0 }
const latentWaterKj = 2257
const latentOrganicsKj = 450
// heat capacities, kJ/kg K: steam tables; organics and diluted gas from memory
const steamKj = 1.95
const waterKj = 4.19
const organicsKj = 2
const gasKj = 1.1

/** MJ per kg of dry wood to bring the vapour from `inC` down to `outC` (both with water boiling at 100 °C between them). */
export function coolingDutyMj(inC: number, outC: number): Range {
  const condensing = waterKgPerKg * (latentWaterKj + steamKj * (inC - 100) + waterKj * (100 - outC))
  const organics = organicsKgPerKg * (latentOrganicsKj + organicsKj * (inC - outC))
  const gas = (share: number): number => share * gasKj * (inC - outC)
  const low = (condensing + organics + gas(gasKgPerKg.low)) / 1000
  const high = (condensing + organics + gas(gasKgPerKg.high)) / 1000
  return { low, likely: (low + high) / 2, high }
}

/** Water that dries off the cloths takes 2430 kJ/L near 30 °C (steam tables): far less of it than of water that only runs by. */
const dryingOffKjPerL = 2430

export interface CoolingNeed {
  heatMj: Range
  meanKw: number
  /** That runs by and warms by `riseK`. */
  waterL: Range
  /** That dries off wet cloths. */
  clothL: Range
  riseK: number
  hours: number
}

/** @param riseK how much warmer the water may run off than it came; 1 L of water takes 4.19 kJ per kelvin. */
export function coolingNeed(dryKg: number, hours: number, riseK: number): CoolingNeed {
  const duty = coolingDutyMj(120, 35)
  const heatMj = { low: duty.low * dryKg, likely: duty.likely * dryKg, high: duty.high * dryKg }
  const litres = (kjPerL: number): Range => ({
    low: (1000 * heatMj.low) / kjPerL,
    likely: (1000 * heatMj.likely) / kjPerL,
    high: (1000 * heatMj.high) / kjPerL,
  })
  return {
    heatMj,
    meanKw: (1000 * heatMj.likely) / (hours * 3600),
    waterL: litres(waterKj * riseK),
    clothL: litres(dryingOffKjPerL),
    riseK,
    hours,
  }
}

/** Heat only to warm the charge's own water from 20 °C and boil it off, kJ per kg of dry wood. */
export function boilOffKj(dryBasisPct: number): number {
  return (dryBasisPct / 100) * (waterKj * 80 + latentWaterKj)
}
