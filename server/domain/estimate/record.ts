import type { Known } from '../../contract/learnt.ts'
import type { Hours } from './learned/horizon.ts'

// How long this kiln took to its stop in earlier firings, set beside what the two opinions say of this one. On 42 firings of 14 kilns with
// three probes the interval score of the stop fell by 32 ± 12 min of 376; the same for start and seal earned nothing.

/** An 80 % range of a normal distribution is so many spreads wide, half of it either way. */
const halfRange = 1.2816
const leastSpreadH = 0.05
const leastAheadH = 0.1

/** @param range hours from now; @param record logarithm of hours from lighting; @param elapsedH since lighting */
export function withRecord(range: Hours, record: Known | null, elapsedH: number): Hours {
  if (record === null) return range
  const [low, , high] = range
  const spread = Math.max(leastSpreadH, (high - low) / (2 * halfRange))
  const usual = Math.exp(record.mean)
  const share = 1 / (spread * spread)
  const ownShare = 1 / (usual * record.sd * (usual * record.sd))
  const ahead = Math.max(leastAheadH, usual - elapsedH)
  const middle = (share * ((low + high) / 2) + ownShare * ahead) / (share + ownShare)
  const half = halfRange / Math.sqrt(share + ownShare)
  const earliest = Math.max(0, middle - half)
  return [earliest, Math.max(earliest, middle), Math.max(earliest, middle + half)]
}
