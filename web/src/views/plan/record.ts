import type { FiringSummary } from '../../../../server/contract/live.ts'
import type { Lot } from '../../../../server/contract/lots.ts'
import type { Range } from '../../../../server/contract/plan.ts'

const hourMs = 3_600_000

/** Hours from lighting to sealing (the beginning of cooling) of every firing that came so far. */
export function hoursToSealOf(firings: readonly FiringSummary[]): number[] {
  const hours: number[] = []
  for (const { startedAt, phases, demo } of firings) {
    const sealed = phases.find(({ phase }) => phase === 'cooling')
    if (sealed && !demo && sealed.from > startedAt) hours.push((sealed.from - startedAt) / hourMs)
  }
  return hours
}

/** Crude litres that the firings of the book gave; null before there are three. */
export function crudeLitresOf(lots: readonly Lot[]): Range | null {
  const litres = lots
    .flatMap((lot) => (lot.kind === 'condensate' && lot.parents.length === 0 && lot.firings.length === 1 ? [lot.cameInMl / 1000] : []))
    .sort((a, b) => a - b)
  const [low, high] = [litres[0], litres.at(-1)]
  if (litres.length < 3 || low === undefined || high === undefined) return null
  return { low, likely: litres[Math.floor(litres.length / 2)] ?? low, high }
}
