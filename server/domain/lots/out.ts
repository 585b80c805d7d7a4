import { condensate, enough, poured } from './book.ts'
import type { Book, Write } from './book.ts'
import type { LotEntry, LotId, Balance } from '../../contract/lots.ts'
import type { EntryProblem } from '../../contract/entry-problems.ts'

export const loss: Write<'loss'> = (book, event, entry) => takeOut(book, event.lot, event.volumeMl, 'lostMl', entry)

export const give: Write<'give'> = (book, event, entry) => takeOut(book, event.lot, event.volumeMl, 'givenMl', entry)

export const use: Write<'use'> = (book, event, entry) => {
  const wrong = takeOut(book, event.lot, event.volumeMl, 'usedMl', entry)
  const lot = condensate(book, event.lot)
  if (wrong.length > 0 || Array.isArray(lot)) return wrong
  const done = { date: entry.date, use: event.use, volumeMl: event.volumeMl, waterMl: event.waterMl, field: event.field ?? null }
  book.lots.set(lot.id, { ...lot, uses: [...lot.uses, done] })
  return []
}

export const check: Write<'check'> = (book, event, entry) => {
  const lot = condensate(book, event.lot)
  if (Array.isArray(lot)) return lot
  // a later reading adds to the earlier ones of the same lot; what is measured again replaces
  const values = { ...lot.lastCheck?.values, ...event.values }
  book.lots.set(lot.id, { ...lot, lastCheck: { norm: event.norm, values, date: entry.date }, entries: [...lot.entries, entry.id] })
  return []
}

function takeOut(book: Book, id: LotId, volumeMl: number, account: keyof Balance, entry: LotEntry): EntryProblem[] {
  const lot = condensate(book, id)
  if (Array.isArray(lot)) return lot
  const wrong = enough(lot, volumeMl, 'volumeMl')
  if (wrong.length > 0) return wrong
  book.lots.set(lot.id, poured(lot, volumeMl, entry))
  book.balance.stockMl -= volumeMl
  book.balance[account] += volumeMl
  return []
}
