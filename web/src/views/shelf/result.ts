import type { Curve } from '../../../../server/contract/live.ts'
import type { Bottle } from '../../../../server/contract/lots.ts'
import type { Range } from '../../../../server/contract/plan.ts'
import type { WholeFiring } from '../../lib/api/api.ts'
import { against, collectedFrom, expectCharge, kilnEfficiency, usualCharge } from '../../lib/domain.ts'
import { chargeOf } from './account.ts'

/** What was weighed or measured after the firing; a later revision stands beside the earlier one. */
export interface Weighed {
  massKg?: number
  moisturePct?: number
  charcoalKg?: number
  finesKg?: number
  crudeL?: number
}

export interface FiringResult {
  massKg: number | undefined
  moisturePct: number | undefined
  dryKg: number | undefined
  bottles: (Omit<Bottle, 'volumeMl'> & { volumeMl: number | null })[]
  crudeL: number | null
  charcoalKg: number | null
  finesKg: number
  /** Charcoal over wood, %, on the bases that their names say. */
  charcoalPct: { asLoaded: number; dry: number; dryWithoutFines: number } | null
  /** Crude liquid over oven-dry wood by mass, %. */
  crudePct: number | null
  expected: { charcoalKg: Range; crudeL: Range } | null
  verdict: { charcoal: Verdict | null; crude: Verdict | null }
}
type Verdict = 'below' | 'within' | 'above'

const crudeKgPerL = 1.01 // middle of 1.005 to 1.016, Theapparat et al. 2018

/** @param weighed later figures, the newest last: each counts before what the log says */
export function resultOf(firing: WholeFiring, curve: Curve, weighed: readonly Weighed[]): FiringResult {
  const later: Weighed = Object.assign({}, ...weighed)
  const collected = collectedFrom(firing.acts, smokeOf(curve), firing.endedAt ?? curve.to)
  const charge = { ...chargeOf(firing), ...later }
  const { massKg, moisturePct } = charge
  const known = massKg !== undefined && moisturePct !== undefined ? { massKg, moisturePct } : null
  const plan = known && expectCharge({ ...usualCharge, ...known, condenser: 'wet-cloths' })
  const expectation = plan?.ok ? plan.value : null
  const measured = collected.bottles.filter((bottle) => bottle.volumeMl !== null)
  const sumL = measured.reduce((sum, bottle) => sum + (bottle.volumeMl ?? 0), 0) / 1000
  const crudeL = later.crudeL ?? (measured.length > 0 ? sumL : null)
  const charcoalKg = later.charcoalKg ?? (collected.charcoalG === null ? null : collected.charcoalG / 1000)
  const finesKg = later.finesKg ?? (collected.finesG ?? 0) / 1000
  const efficiency = known && charcoalKg !== null ? kilnEfficiency(known, charcoalKg, finesKg) : null
  return {
    massKg,
    moisturePct,
    dryKg: expectation?.dryKg,
    bottles: collected.bottles,
    crudeL,
    charcoalKg,
    finesKg,
    charcoalPct: efficiency?.ok
      ? {
          asLoaded: efficiency.value.asLoadedPct,
          dry: efficiency.value.dryPct,
          dryWithoutFines: efficiency.value.dryWithoutFinesPct,
        }
      : null,
    crudePct: expectation && crudeL !== null ? (100 * crudeL * crudeKgPerL) / expectation.dryKg : null,
    expected: expectation && { charcoalKg: expectation.charcoalKg, crudeL: expectation.crudeL },
    verdict: {
      charcoal: expectation && charcoalKg !== null ? against(charcoalKg, expectation.charcoalKg).verdict : null,
      crude: expectation && crudeL !== null ? against(crudeL, expectation.crudeL).verdict : null,
    },
  }
}

function smokeOf({ t, series }: Curve): Parameters<typeof collectedFrom>[1] {
  const probe = series.find((one) => one.key === 'smoke' && one.values.some((value) => value !== null))
  if (probe) return { t, value: probe.values, by: 'probe', probeAt: null }
  const estimate = series.find((one) => one.key === 'smoke-estimated')
  return estimate ? { t, value: estimate.values, by: 'estimate', probeAt: null } : null
}
