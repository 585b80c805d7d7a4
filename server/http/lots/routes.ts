import type { LotEntry } from '../../contract/lots.ts'
import { foldLedger } from '../../domain/lots/ledger.ts'
import { labelOf } from '../../domain/lots/label.ts'
import type { Answer, Question } from '../context.ts'
import { understood } from '../context.ts'
import type { Instance } from '../instance.ts'
import { Problem } from '../problem.ts'
import { lotWordSchema } from './entry-schema.ts'
import type { LotWord } from './entry-schema.ts'
import { dateHere, LotBook } from './lot-book.ts'
import { squareCode } from './square-code.ts'

export interface LotsAnswer {
  entries: readonly LotEntry[]
  today: { date: string; clockSure: boolean }
  /** Minutes that local time is ahead of UTC today, where the box stands. */
  offsetMin: number
}

/** One ledger for the kiln's site and one for the demo, each as long as its instance lives. */
export function lotRoutes() {
  const books = new WeakMap<Instance, LotBook>()
  const bookOf = (instance: Instance): LotBook => {
    const found = books.get(instance)
    if (found) return found
    const book = new LotBook({
      store: instance.store,
      now: () => instance.now(),
      clockSure: () => instance.clockConfirmed(),
      dateOf: dateHere,
    })
    books.set(instance, book)
    return book
  }
  return {
    async lots({ instance }: Question): Promise<Answer> {
      const book = bookOf(instance)
      const json: LotsAnswer = {
        entries: await book.all(),
        today: book.today(),
        offsetMin: -new Date(instance.now()).getTimezoneOffset(),
      }
      return { json }
    },
    /** 422 with every problem when it is refused; nothing is then kept. */
    async addLotEntry({ instance, who, body }: Question): Promise<Answer> {
      // members that JSON leaves out are left out of the contract's shape as well
      const word = understood(lotWordSchema, body) as LotWord
      const added = await bookOf(instance).add(word, who)
      return added.ok ? { json: added.value, status: 201 } : Response.json({ problems: added.problems }, { status: 422 })
    },
    /** The square code of a lot's label. @param query `address`: where the page is open, so that a tablet finds the lot */
    async lotCode({ instance, params, query }: Question): Promise<Answer> {
      const book = bookOf(instance)
      const ledger = foldLedger(await book.all())
      const lot = ledger.ok ? ledger.value.lots.get(params.id ?? '') : undefined
      if (!lot) throw new Problem('not-found')
      const label = labelOf(lot, book.today(), addressOf(query.get('address')))
      return new Response(squareCode(label.code), { headers: { 'content-type': 'image/svg+xml', 'cache-control': 'no-store' } })
    },
  }
}

function addressOf(text: string | null): string | null {
  if (text === null) return null
  if (text.length > 120 || !/^https?:\/\/[\w.:[\]-]+\/(demo\/)?$/.test(text))
    throw new Problem('not-understood', [{ path: 'address', what: 'is no address of this page' }])
  return text
}
