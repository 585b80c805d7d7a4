import type { EntryProblem } from '../../contract/entry-problems.ts'
import type { Balance, CharcoalLot, CondensateLot, Ledger, LotEntry, LotEvent, LotEventName, LotId } from '../../contract/lots.ts'
import { problem } from '../entered/number.ts'

/** The ledger while it is being folded; made new for every fold, so that changing it in place harms nobody. */
export type Book = Ledger

export type EventOf<W extends LotEventName> = Extract<LotEvent, { what: W }>
/** Writes one event into the book, or says what is wrong and leaves the book alone. */
export type Write<W extends LotEventName> = (book: Book, event: EventOf<W>, entry: LotEntry) => EntryProblem[]

const emptyBalance: Balance = {
  inMl: 0,
  stockMl: 0,
  tarTinMl: 0,
  oilTinMl: 0,
  usedMl: 0,
  givenMl: 0,
  lostMl: 0,
  measuredDifferenceMl: 0,
}

export function openBook(): Book {
  return { lots: new Map(), balance: { ...emptyBalance } }
}

/** Zero when the balance closes. */
export function balanceGapMl(ledger: Ledger): number {
  const { inMl, stockMl, tarTinMl, oilTinMl, usedMl, givenMl, lostMl, measuredDifferenceMl } = ledger.balance
  return inMl + measuredDifferenceMl - stockMl - tarTinMl - oilTinMl - usedMl - givenMl - lostMl
}

/** What all condensate lots hold together. */
export function heldMl(ledger: Ledger): number {
  let sum = 0
  for (const lot of ledger.lots.values()) if (lot.kind === 'condensate') sum += lot.volumeMl
  return sum
}

export function condensate(book: Book, id: LotId): CondensateLot | EntryProblem[] {
  const lot = book.lots.get(id)
  if (lot === undefined) return [problem('no-such-lot', 'lot', { lot: id })]
  return lot.kind === 'condensate' ? lot : [problem('wrong-kind-of-lot', 'lot', { lot: id, wanted: 'condensate' })]
}

export function charcoal(book: Book, id: LotId): CharcoalLot | EntryProblem[] {
  const lot = book.lots.get(id)
  if (lot === undefined) return [problem('no-such-lot', 'lot', { lot: id })]
  return lot.kind === 'charcoal' ? lot : [problem('wrong-kind-of-lot', 'lot', { lot: id, wanted: 'charcoal' })]
}

export function freeId(book: Book, id: LotId): EntryProblem[] {
  return book.lots.has(id) ? [problem('id-taken', 'lot', { lot: id })] : []
}

/** Pouring stirs: whatever layers were measured are no longer known. */
export function poured(lot: CondensateLot, volumeMl: number, entry: LotEntry): CondensateLot {
  return { ...lot, volumeMl: lot.volumeMl - volumeMl, layers: null, entries: [...lot.entries, entry.id] }
}

export function enough(lot: CondensateLot, volumeMl: number, field: string): EntryProblem[] {
  return volumeMl > lot.volumeMl
    ? [problem('more-than-there-is', field, { lot: lot.id, value: volumeMl, high: lot.volumeMl, unit: 'mL' })]
    : []
}
