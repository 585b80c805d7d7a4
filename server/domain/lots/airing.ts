import type { CharcoalLot } from '../../contract/lots.ts'
import type { Ms } from '../../contract/fold.ts'

const hourMs = 3_600_000
/** In the open before it goes under a roof: a day (FAO-type advice, from memory; a maker says at least 8 h). */
const airingHours = 24
/** Weathering before carriage: IMDG 42-24, special provision 978 (UN 1361, class 4.2). */
const weatheringDays = 14
/** Store and pack at or below; above it even a small heap may heat itself (Dzonzi-Undi et al. 2014; IMDG special provision 978). */
const warmestPileC = 40
export type AiringState = 'not-aired' | 'airing' | 'aired'

export interface Airing {
  state: AiringState
  /** Not under a roof before; null while it is not spread out. */
  storeFrom: Ms | null
  /** Not on a lorry before. */
  carryFrom: Ms
  cautions: ('not-indoors-while-warm' | 'pile-too-warm' | 'clock-unconfirmed' | 'stored-before-aired')[]
}

export function airingOf(lot: CharcoalLot, now: Ms, clockSure: boolean): Airing {
  const storeFrom = lot.airedAt === null ? null : lot.airedAt + airingHours * hourMs
  const sure = clockSure && lot.clockSure
  const state = storeFrom === null ? 'not-aired' : now < storeFrom || !sure ? 'airing' : 'aired'
  const cautions: Airing['cautions'] = []
  if (state !== 'aired') cautions.push('not-indoors-while-warm')
  if (lot.stored?.pileC !== undefined && lot.stored.pileC !== null && lot.stored.pileC > warmestPileC) cautions.push('pile-too-warm')
  if (!sure) cautions.push('clock-unconfirmed')
  if (lot.stored !== null && (storeFrom === null || lot.stored.at < storeFrom)) cautions.push('stored-before-aired')
  return { state, storeFrom, carryFrom: lot.drawnAt + weatheringDays * 24 * hourMs, cautions }
}
