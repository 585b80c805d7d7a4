import type { Checked } from '../../contract/entry-problems.ts'
import type { Range } from '../../contract/plan.ts'
import { accept, outside, refuse } from '../entered/number.ts'
import { charcoalByEndTemperature, charcoalByEndTemperatureFao } from './tables/charcoal.ts'

type Row<K extends string> = { endC: number } & Record<K, number>

/** Straight lines between rows; the last slope is not carried on beyond the table. */
function between<K extends string>(rows: readonly Row<K>[], endC: number, key: K): number {
  let below: Row<K> | undefined
  for (const row of rows) {
    if (row.endC >= endC) {
      if (below === undefined || row.endC === endC) return row[key]
      return below[key] + ((row[key] - below[key]) * (endC - below.endC)) / (row.endC - below.endC)
    }
    below = row
  }
  return below === undefined ? Number.NaN : below[key]
}

export interface CharcoalExpectation {
  /** % of oven-dry wood: laboratory, no air. */
  yieldPct: Range
  fixedCarbonPct: number
  volatilePct: number
  liquidPct: number
  gasPct: number
  /** Carbon that stays, % of oven-dry wood. */
  fixedCarbonYieldPct: number
}

/** @param endC hottest the charge becomes before sealing, 300 to 700 °C; outside the measured 350 to 650 the nearest row holds. */
export function expectCharcoal(endC: number): Checked<CharcoalExpectation> {
  const wrong = outside('endC', endC, 300, 700, '°C')
  if (wrong.length > 0) return refuse(...wrong)
  const measured = between(charcoalByEndTemperature, endC, 'yieldPct')
  const fao = between(charcoalByEndTemperatureFao, endC, 'yieldPct')
  const fixedCarbonPct = between(charcoalByEndTemperature, endC, 'fixedCarbonPct')
  return accept({
    yieldPct: { low: Math.min(measured, fao) - 2, likely: measured, high: Math.max(measured, fao) + 2 },
    fixedCarbonPct,
    volatilePct: between(charcoalByEndTemperature, endC, 'volatilePct'),
    liquidPct: between(charcoalByEndTemperature, endC, 'liquidPct'),
    gasPct: between(charcoalByEndTemperature, endC, 'gasPct'),
    fixedCarbonYieldPct: (measured * fixedCarbonPct) / 100,
  })
}

/** The nearest measured ignition temperature in air, for what a hot spot means; °C. */
export function ignitionC(endC: number): number {
  return between(charcoalByEndTemperature, endC, 'ignitionC')
}
