import type { Act } from '../../contract/actions.ts'
import type { ActId, Estimate } from '../../contract/fold.ts'
import { standing } from './facts.ts'

/** What has dripped in this firing by estimate, and how much of it when each bottle was put there. kg; a litre weighs about one. */
export interface Run {
  kg: number
  bottles: Record<ActId, number>
}

export function startRun(): Run {
  return { kg: 0, bottles: {} }
}

/**
 * Another minute at the estimated rate. Summed here and not read from the estimate's own total, which turns back and forth as members that
 * saw another past take over.
 */
export function letRun(run: Run, estimate: Estimate | null): void {
  if (estimate !== null) run.kg += estimate.condensateKgH / 60
}

/** A bottle that was put there some minutes ago stands since then: what ran meanwhile is in it. */
export function markRun(run: Run, { id, at, doneAt, act, corrects }: Act, estimate: Estimate | null): void {
  if (estimate === null || (act.action !== 'start-collecting' && act.action !== 'swap-bottle')) return
  // an entry that is put right hours later is still the same bottle
  const before = corrects === undefined ? undefined : run.bottles[corrects]
  run.bottles[id] = before ?? Math.max(0, run.kg - (estimate.condensateKgH * Math.max(0, at - doneAt)) / 3_600_000)
}

/** How far the run of one bottle may be off, as a share of it, to each side. In trials on simulated firings nine of ten hours lay within 0.25. */
const offShare = 0.3

/** What is in the bottle under the outlet now, L; null while none stands there or none was put there under the model's eyes. */
export function levelOf(run: Run, acts: readonly Act[]): { low: number; high: number } | null {
  const last = standing(acts).findLast(({ act }) => ['start-collecting', 'swap-bottle', 'stop-collecting'].includes(act.action))
  if (last === undefined || last.act.action === 'stop-collecting') return null
  const before = run.bottles[last.id]
  if (before === undefined) return null
  const since = Math.max(0, run.kg - before)
  return { low: (1 - offShare) * since, high: (1 + offShare) * since }
}
