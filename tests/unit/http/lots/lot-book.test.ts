import { describe, expect, it } from 'vitest'
import type { LotEvent } from '../../../../server/contract/lots.ts'
import { LotBook } from '../../../../server/http/lots/lot-book.ts'
import type { LotWord } from '../../../../server/http/lots/entry-schema.ts'
import { lotWordSchema } from '../../../../server/http/lots/entry-schema.ts'
import { createMemoryStore } from '../../../../server/storage/memory.ts'
import { bottle, demijohn, lifeOfALot } from '../../../support/lot-story.ts'

const today = Date.parse('2027-02-01T12:00:00Z')

function bookOn(store = createMemoryStore(), clock = { sure: true }) {
  return new LotBook({ store, now: () => today, clockSure: () => clock.sure, dateOf: (at) => new Date(at).toISOString().slice(0, 10) })
}
const fill = (id: string, lot: string): LotWord => ({
  id,
  event: { what: 'fill', lot, firing: null, bottles: [bottle(1, 1000)], vessel: demijohn },
})
const give = (id: string, volumeMl: number): LotWord => ({ id, event: { what: 'give', lot: '1', volumeMl } })

describe('the book of lots in the store', () => {
  it('says when and who, and knows all again after a restart, in order', async () => {
    const store = createMemoryStore()
    const book = bookOn(store)
    await book.add(fill('a', '1'), 'operator')
    await book.add(give('b', 400), 'owner')
    const after = await bookOn(store).all()
    expect(after.map(({ id, by, at, date, clockSure }) => [id, by, at, date, clockSure])).toEqual([
      ['a', 'operator', today, '2027-02-01', true],
      ['b', 'owner', today, '2027-02-01', true],
    ])
  })

  it('lets two tablets take the same litre once', async () => {
    const book = bookOn()
    await book.add(fill('a', '1'), 'operator')
    const both = await Promise.all([book.add(give('b', 700), 'one'), book.add(give('c', 700), 'other')])
    expect(both.map(({ ok }) => ok)).toEqual([true, false])
    expect((await book.all()).map(({ id }) => id)).toEqual(['a', 'b'])
  })

  it('takes the same word twice as one, and another word of the same id not at all', async () => {
    const book = bookOn()
    await book.add(fill('a', '1'), 'operator')
    await book.add(give('b', 400), 'operator')
    expect(await book.add(give('b', 400), 'operator')).toMatchObject({ ok: true, value: { id: 'b' } })
    expect(await book.add(give('b', 500), 'operator')).toMatchObject({ ok: false, problems: [{ code: 'id-taken' }] })
    expect(await book.all()).toHaveLength(2)
  })

  it('goes on after a refusal and after a store that failed', async () => {
    const store = createMemoryStore()
    let failing = true
    const book = bookOn({
      ...store,
      documents: (kind) => store.documents(kind),
      putDocument: (document) => (failing ? Promise.reject(new Error('disk full')) : store.putDocument(document)),
    })
    await expect(book.add(fill('a', '1'), 'operator')).rejects.toThrow('disk full')
    expect(await book.all()).toEqual([])
    failing = false
    expect((await book.add(fill('a', '1'), 'operator')).ok).toBe(true)
    expect((await book.add(give('x', 5000), 'operator')).ok).toBe(false)
    expect((await book.add(give('y', 500), 'operator')).ok).toBe(true)
  })

  it('opens once the store can be read, though the first reading failed', async () => {
    const store = createMemoryStore()
    await bookOn(store).add(fill('a', '1'), 'operator')
    let failing = true
    const book = bookOn({
      ...store,
      documents: (kind) => (failing ? Promise.reject(new Error('busy')) : store.documents(kind)),
      putDocument: (document) => store.putDocument(document),
    })
    await expect(book.all()).rejects.toThrow('busy')
    failing = false
    expect((await book.all()).map(({ id }) => id)).toEqual(['a'])
  })

  it('trusts a date that a person named, not a clock in doubt, and no day that has not come', async () => {
    const clock = { sure: false }
    const book = bookOn(createMemoryStore(), clock)
    await book.add(fill('a', '1'), 'operator')
    await book.add({ ...fill('b', '2'), date: '2027-01-02' }, 'operator')
    expect((await book.all()).map(({ clockSure }) => clockSure)).toEqual([false, true])
    clock.sure = true
    expect(await book.add({ ...fill('c', '3'), date: '2027-02-02' }, 'operator')).toMatchObject({
      ok: false,
      problems: [{ code: 'date-in-future' }],
    })
  })

  it('keeps day and doubt of what is corrected, unless the correction names a day', async () => {
    const clock = { sure: false }
    const book = bookOn(createMemoryStore(), clock)
    await book.add({ ...fill('a', '1'), doneAt: today - 40 * 86_400_000 }, 'operator')
    clock.sure = true
    const event: LotEvent = { what: 'fill', lot: '1', firing: null, bottles: [bottle(1, 900)], vessel: demijohn }
    await book.add({ id: 'b', event, corrects: 'a' }, 'operator')
    await book.add({ id: 'c', event, corrects: 'b', date: '2026-12-24' }, 'operator')
    expect((await book.all()).map(({ date, clockSure }) => [date, clockSure])).toEqual([
      ['2026-12-23', false],
      ['2026-12-23', false],
      ['2026-12-24', true],
    ])
  })

  it('knows the shape of every event, and turns away what is none', () => {
    for (const { id, event } of lifeOfALot) expect(lotWordSchema.safeParse({ id, event }).success).toBe(true)
    const wrong: unknown[] = [
      {},
      { id: 'x', event: { what: 'melt', lot: '1' } },
      { id: 'x', event: { what: 'give', lot: '1', volumeMl: '400' } },
      { id: 'x', event: { what: 'give', lot: '1', volumeMl: 4, litres: 4 } },
      { id: '', event: { what: 'air', lot: '1' } },
      {
        id: 'x',
        event: { what: 'check', lot: '1', norm: 'none', values: {} } satisfies Omit<LotEvent & { what: 'check' }, 'norm'> & {
          norm: string
        },
      },
    ]
    for (const one of wrong) expect(lotWordSchema.safeParse(one).success).toBe(false)
  })
})
