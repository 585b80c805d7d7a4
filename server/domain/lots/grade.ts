import type { CharcoalLot, CharcoalValues, Verdict } from '../../contract/lots.ts'
import { together } from './check.ts'

interface GradeClause {
  clause: keyof CharcoalValues
  low: number | null
  high: number | null
}

/** Lump charcoal of EN 1860-2 (2005), as summed up in trade and CEN papers; shares in %, bulk in kg/m³. */
const lump: readonly GradeClause[] = [
  { clause: 'fixedCarbonPct', low: 75, high: null },
  { clause: 'ashPct', low: null, high: 8 },
  { clause: 'moisturePct', low: null, high: 8 },
  { clause: 'over80Pct', low: null, high: 10 },
  { clause: 'over20Pct', low: 80, high: null },
  { clause: 'under10Pct', low: null, high: 7 },
  { clause: 'bulkKgPerM3', low: 130, high: null },
]

export interface GradeResult extends GradeClause {
  measured: number | null
  verdict: Verdict
}

/** Against the norm for lump charcoal. Fines that were weighed at unloading stand in for the share under 10 mm until it is sieved. */
export function gradeCharcoal(lot: Pick<CharcoalLot, 'massG' | 'finesG' | 'values'>): { verdict: Verdict; clauses: GradeResult[] } {
  const values: CharcoalValues = { under10Pct: (100 * lot.finesG) / lot.massG, ...lot.values }
  const clauses = lump.map((clause): GradeResult => {
    const measured = values[clause.clause] ?? null
    if (measured === null) return { ...clause, measured, verdict: 'not-measured' }
    const right = (clause.low === null || measured >= clause.low) && (clause.high === null || measured <= clause.high)
    return { ...clause, measured, verdict: right ? 'pass' : 'fail' }
  })
  return { verdict: together(clauses.map((clause) => clause.verdict)), clauses }
}
