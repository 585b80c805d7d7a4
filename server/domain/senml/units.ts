import { isSecondaryUnit, primaryUnits, secondaryUnits } from './tables/units.ts'

export interface InPrimary {
  unit: string
  value: number
}

/**
 * A value in a unit of the SenML registries, told in its primary unit.
 * @param secondaryAllowed feature bit 4 of the pack's `bver` (RFC 9100, RFC 8798)
 */
export function toPrimary(value: number, unit: string, secondaryAllowed: boolean): InPrimary | 'unknown-unit' | 'unit-version' {
  if (primaryUnits.has(unit)) return { unit, value }
  if (!isSecondaryUnit(unit)) return 'unknown-unit'
  if (!secondaryAllowed) return 'unit-version'
  const { primary, scale, offset } = secondaryUnits[unit]
  return { unit: primary, value: value * scale + offset }
}
