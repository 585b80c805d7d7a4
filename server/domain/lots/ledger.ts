import type { Checked, EntryProblem } from '../../contract/entry-problems.ts'
import type { Ledger, LotEntry } from '../../contract/lots.ts'
import { accept, problem, refuse } from '../entered/number.ts'
import { readDate } from '../entered/calendar.ts'
import { openBook } from './book.ts'
import type { Book } from './book.ts'
import { air, charcoalCheck, charcoalOut, store, weigh } from './charcoal.ts'
import { effective, rightlyNamed } from './corrections.ts'
import { enteredWell } from './entered.ts'
import { draw, layers } from './layers.ts'
import { check, give, loss, use } from './out.ts'
import { fill, join, move, split } from './vessels.ts'

/** All lots, from all entries. Entries that were admitted one by one always fold; the problems are for files from elsewhere. */
export function foldLedger(entries: readonly LotEntry[]): Checked<Ledger> {
  const book = openBook()
  for (const entry of effective(entries)) {
    const wrong = [...enteredWell(entry.event), ...write(book, entry)]
    if (wrong.length > 0) return refuse(...wrong.map((one) => ({ ...one, params: { ...one.params, entry: entry.id } })))
  }
  return accept(book)
}

/**
 * Whether one more entry may stand. A correction is tried against all that came after it: what would leave less than nothing
 * in any vessel at any time is refused, with the entry that it would break.
 */
export function admit(entries: readonly LotEntry[], entry: LotEntry): Checked<Ledger> {
  const date = readDate('date', entry.date)
  const wrong = [...(date.ok ? [] : date.problems), ...rightlyNamed(entries, entry), ...enteredWell(entry.event)]
  if (wrong.length > 0) return refuse(...wrong)
  const after = foldLedger([...entries, entry])
  if (after.ok || entry.corrects === undefined) return after
  const broken = after.problems.map((one) => (one.params['entry'] === entry.id ? one : broke(one)))
  return refuse(...broken)
}

function broke(one: EntryProblem): EntryProblem {
  return problem('correction-breaks-stock', one.field, { ...one.params, because: one.code })
}

function write(book: Book, entry: LotEntry): EntryProblem[] {
  const { event } = entry
  switch (event.what) {
    case 'fill':
      return fill(book, event, entry)
    case 'join':
      return join(book, event, entry)
    case 'split':
      return split(book, event, entry)
    case 'move':
      return move(book, event, entry)
    case 'layers':
      return layers(book, event, entry)
    case 'draw':
      return draw(book, event, entry)
    case 'loss':
      return loss(book, event, entry)
    case 'use':
      return use(book, event, entry)
    case 'give':
      return give(book, event, entry)
    case 'check':
      return check(book, event, entry)
    case 'charcoal':
      return weigh(book, event, entry)
    case 'charcoal-check':
      return charcoalCheck(book, event, entry)
    case 'air':
      return air(book, event, entry)
    case 'store':
      return store(book, event, entry)
    case 'charcoal-out':
      return charcoalOut(book, event, entry)
    case 'void':
      return []
  }
}

/** The next number that no lot has. */
export function nextLotId(ledger: Ledger): string {
  let most = 0
  for (const id of ledger.lots.keys()) if (/^\d{1,9}$/.test(id)) most = Math.max(most, Number(id))
  return String(most + 1)
}
