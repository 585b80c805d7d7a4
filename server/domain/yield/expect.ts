import type { Checked } from '../../contract/entry-problems.ts'
import type { ChargeExpectation, CondenserKind, Range } from '../../contract/plan.ts'
import { accept, outside, refuse } from '../entered/number.ts'
import { expectCharcoal } from './charcoal.ts'
import { expectCrudeL, expectVinegarL } from './condensate.ts'
import { coolingNeed } from './cooling.ts'
import { dryMass, wetToDryBasis } from './moisture.ts'
import { poorDrumYieldPct } from './tables/charcoal.ts'

export interface ChargePlan {
  massKg: number
  /** Wet basis. */
  moisturePct: number
  condenser: CondenserKind
  /** Hottest the charge becomes before sealing. */
  endC: number
  /** How long the vapour runs. */
  collectingHours: number
  waterRiseK: number
  bottleL: number
}

export const usualCharge = { endC: 450, collectingHours: 4, waterRiseK: 20, bottleL: 1.5 }

/** What a charge lets expect and what to have ready; ranges follow the published spread, from a poor drum to a tight retort. */
export function expectCharge(plan: ChargePlan): Checked<ChargeExpectation> {
  const dryBasis = wetToDryBasis(plan.moisturePct)
  const charcoal = expectCharcoal(plan.endC)
  const wrong = [
    ...outside('massKg', plan.massKg, 1, 20_000, 'kg'),
    ...(dryBasis.ok ? [] : dryBasis.problems),
    ...(charcoal.ok ? [] : charcoal.problems),
    ...outside('collectingHours', plan.collectingHours, 0.5, 72, 'h'),
    ...outside('waterRiseK', plan.waterRiseK, 2, 60, 'K'),
    ...outside('bottleL', plan.bottleL, 0.2, 60, 'L'),
  ]
  if (wrong.length > 0 || !dryBasis.ok || !charcoal.ok) return refuse(...wrong)
  const dryKg = dryMass(plan.massKg, plan.moisturePct)
  const crudeL = expectCrudeL(dryKg, plan.condenser)
  const share = (pct: number): number => (dryKg * pct) / 100
  // likely for a drum under earth: between the poor drum and the laboratory; at best what the FAO's list and tight kilns give (34.0 % Floresta e
  // Ambiente, 28 to 38 % a container kiln: trade facts 3.2)
  const likelyPct = (poorDrumYieldPct + charcoal.value.yieldPct.likely) / 2
  const charcoalKg: Range = { low: share(poorDrumYieldPct), likely: share(likelyPct), high: share(charcoal.value.yieldPct.high) }
  return accept({
    asLoadedKg: plan.massKg,
    dryKg,
    waterKg: plan.massKg - dryKg,
    moistureWetPct: plan.moisturePct,
    moistureDryPct: dryBasis.value,
    charcoalKg,
    fixedCarbonPct: charcoal.value.fixedCarbonPct,
    crudeL,
    vinegarL: expectVinegarL(crudeL),
    cooling: coolingNeed(dryKg, plan.collectingHours, plan.waterRiseK),
    bottles: bottlesFor(crudeL.high, plan.bottleL),
  })
}

/** Enough for the upper end and one to spare, a fresh one before the stop; first water, vinegar and tar are caught apart in three marked vessels. */
function bottlesFor(highL: number, sizeL: number): ChargeExpectation['bottles'] {
  return { count: Math.ceil(highL / sizeL) + 1, sizeL, marked: 3 }
}
