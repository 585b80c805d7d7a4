import type { Rate, Ratio, UseId } from '../../contract/dilution.ts'
import { asFold } from './convention.ts'
import { strongestOnPlantsFold } from './mix.ts'
import { rates, touches } from './tables/rates.ts'

/** Both ends of a published rate in its own convention, the stronger first. */
export function ends(rate: Rate): [Ratio, Ratio] {
  const ratio = (value: number): Ratio =>
    rate.convention === 'parts' ? { convention: 'parts', water: value } : { convention: 'fold', fold: value }
  return [ratio(rate.from), ratio(rate.to)]
}

/** Rates that a page may offer for a use: never one that breaks our own refusals. */
export function offeredRates(use: UseId): Rate[] {
  return rates.filter(
    (rate) => rate.use === use && rate.offered && !(touches[use] === 'living-plants' && asFold(ends(rate)[0]) < strongestOnPlantsFold),
  )
}

/** The mildest published rate for no particular crop (or else for any) is where a page starts; the person goes stronger by choice. */
export function firstRatio(use: UseId): Ratio | null {
  const published = offeredRates(use).filter((rate) => rate.kind === 'published')
  const general = published.filter((rate) => rate.crop === null)
  let mildest: Ratio | null = null
  for (const rate of general.length > 0 ? general : published) {
    const weak = ends(rate)[1]
    if (mildest === null || asFold(weak) > asFold(mildest)) mildest = weak
  }
  return mildest
}
