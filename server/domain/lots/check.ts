import type { CheckResult, CheckValues, ClauseName, ClauseResult, CondensateLot, DateText, NormId, Verdict } from '../../contract/lots.ts'
import { densityAt } from './density.ts'
import { restOf } from './rest.ts'
import { smokeWindow } from './smoke.ts'
import { norms } from './tables/norms.ts'
import type { Norm } from './tables/norms.ts'

/** Every clause of the norm on its own, so that a page can say which one failed and which was never measured. */
export function checkLot(
  lot: CondensateLot,
  normId: NormId,
  values: CheckValues,
  today: { date: DateText; clockSure: boolean },
  measured: DateText | null,
): CheckResult {
  const norm = norms[normId]
  const clauses = [...numbers(norm, values), ...looks(norm, values), ...origins(norm, lot, today)]
  return { norm: normId, verdict: together(clauses.map((clause) => clause.verdict)), clauses, date: measured }
}

/** A failure anywhere fails; what was not measured is never a pass. */
export function together(verdicts: readonly Verdict[]): Verdict {
  if (verdicts.includes('fail')) return 'fail'
  return verdicts.length === 0 || verdicts.includes('not-measured') ? 'not-measured' : 'pass'
}

interface Asked {
  low: number
  high: number | null
  source: string
}

function band(clause: ClauseName, asked: Asked | undefined, measured: number | undefined, corrected?: number): ClauseResult[] {
  if (asked === undefined) return []
  const base = { clause, low: asked.low, high: asked.high, wanted: [], source: asked.source }
  if (measured === undefined) return [{ ...base, verdict: 'not-measured', measured: null, because: 'nothing-entered' }]
  // rounded to what the norms print (four decimals), so that 1.005 on the scale is not 1.00499 by arithmetic
  const judged = Math.round((corrected ?? measured) * 1e4) / 1e4
  const because = judged < asked.low ? 'below' : asked.high !== null && judged > asked.high ? 'above' : null
  const verdict = because === null ? 'pass' : 'fail'
  return [{ ...base, verdict, measured, because, ...(corrected === undefined ? {} : { corrected: judged }) }]
}

function numbers(norm: Norm, values: CheckValues): ClauseResult[] {
  const { density } = values
  const corrected = density === undefined || norm.density === undefined ? undefined : densityAt(density, norm.density.referenceC)
  return [
    ...band('ph', norm.ph, values.ph),
    ...band('density', norm.density, density?.gPerMl, corrected),
    ...band('acidity', norm.acidity, values.acidityPct),
    ...band('dissolved-tar', norm.dissolvedTar, values.dissolvedTarPct),
  ]
}

function look(
  clause: ClauseName,
  asked: { wanted: readonly string[]; source: string } | undefined,
  seen: string | undefined,
): ClauseResult[] {
  if (asked === undefined) return []
  const base = { clause, low: null, high: null, wanted: [...asked.wanted], source: asked.source }
  if (seen === undefined) return [{ ...base, verdict: 'not-measured', measured: null, because: 'nothing-entered' }]
  const right = asked.wanted.includes(seen)
  return [{ ...base, verdict: right ? 'pass' : 'fail', measured: seen, because: right ? null : 'other-than-wanted' }]
}

function looks(norm: Norm, values: CheckValues): ClauseResult[] {
  return [...look('colour', norm.colour, values.colour), ...look('clarity', norm.clarity, values.clarity)]
}

function origins(norm: Norm, lot: CondensateLot, today: { date: DateText; clockSure: boolean }): ClauseResult[] {
  const results: ClauseResult[] = []
  if (norm.smoke !== undefined) results.push(smokeWindow(lot.bottles, norm.smoke))
  if (norm.rest !== undefined) results.push(rest(norm.rest, lot, today))
  if (norm.rawMaterial !== undefined) {
    const known = lot.wood.length > 0
    const verdict = lot.treatedWood ? 'fail' : known ? 'pass' : 'not-measured'
    const because = lot.treatedWood ? 'treated-wood' : known ? null : 'wood-not-named'
    results.push(origin('raw-material', verdict, known ? lot.wood.join(', ') : null, because, norm.rawMaterial.source))
  }
  if (norm.vessel !== undefined) {
    const eaten = lot.vessel.material === 'galvanised' || lot.vessel.material === 'steel'
    const wrong = eaten ? 'acid-eats-it' : lot.vessel.material === 'drink-bottle' ? 'drink-bottle' : null
    results.push(origin('vessel', wrong === null ? 'pass' : 'fail', lot.vessel.material, wrong, norm.vessel.source))
  }
  return results
}

function rest(asked: { days: number; source: string }, lot: CondensateLot, today: { date: DateText; clockSure: boolean }): ClauseResult {
  const view = restOf(lot, today)
  const base = { clause: 'rest' as const, low: asked.days, high: null, wanted: [], source: asked.source }
  if (view.state === 'refused') return { ...base, verdict: 'not-measured', measured: null, because: view.problem.code }
  const enough = view.restedDays >= asked.days
  return { ...base, verdict: enough ? 'pass' : 'fail', measured: view.restedDays, because: enough ? null : 'still-resting' }
}

function origin(clause: ClauseName, verdict: Verdict, measured: string | null, because: string | null, source: string): ClauseResult {
  return { clause, verdict, measured, low: null, high: null, wanted: [], because, source }
}
