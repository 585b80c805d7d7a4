import type { EntryProblem } from '../../contract/entry-problems.ts'
import type { Bottle, CondensateLot, DateText, LotId } from '../../contract/lots.ts'
import { condensate, enough, freeId, poured } from './book.ts'
import type { Write } from './book.ts'
import { problem } from '../entered/number.ts'

export const fill: Write<'fill'> = (book, event, entry) => {
  const wrong = freeId(book, event.lot)
  const volumeMl = event.bottles.reduce((sum, bottle) => sum + bottle.volumeMl, 0)
  if (event.bottles.length === 0) wrong.push(problem('missing', 'bottles'))
  wrong.push(...fits(volumeMl, event.vessel.capacityMl))
  if (wrong.length > 0) return wrong
  book.lots.set(event.lot, {
    kind: 'condensate',
    id: event.lot,
    stage: 'crude',
    firings: event.firing === null ? [] : [event.firing],
    parents: [],
    filled: entry.clockSure ? entry.date : null,
    drawn: null,
    bottles: event.bottles,
    vessel: event.vessel,
    wood: event.wood === undefined ? [] : [event.wood],
    treatedWood: event.treatedWood ?? false,
    distilled: event.distilled ?? false,
    demo: event.demo ?? false,
    volumeMl,
    cameInMl: volumeMl,
    layers: null,
    measured: null,
    lastCheck: null,
    uses: [],
    entries: [entry.id],
  })
  book.balance.inMl += volumeMl
  book.balance.stockMl += volumeMl
  return []
}

/** All that is poured together rests as long as its youngest part. */
export const join: Write<'join'> = (book, event, entry) => {
  const wrong = freeId(book, event.lot)
  if (event.from.length === 0) wrong.push(problem('missing', 'from'))
  const named = new Set(event.from.map((part) => part.lot))
  if (named.size < event.from.length) wrong.push(problem('same-lot-twice', 'from'))
  const parts: { lot: CondensateLot; volumeMl: number }[] = []
  for (const part of event.from) {
    const lot = condensate(book, part.lot)
    if (Array.isArray(lot)) wrong.push(...lot)
    else {
      wrong.push(...enough(lot, part.volumeMl, 'volumeMl'))
      parts.push({ lot, volumeMl: part.volumeMl })
    }
  }
  const volumeMl = event.from.reduce((sum, part) => sum + part.volumeMl, 0)
  wrong.push(...fits(volumeMl, event.vessel.capacityMl))
  const first = parts[0]
  if (wrong.length > 0 || first === undefined) return wrong
  for (const part of parts) book.lots.set(part.lot.id, poured(part.lot, part.volumeMl, entry))
  const lots = parts.map((part) => part.lot)
  book.lots.set(event.lot, {
    ...first.lot,
    id: event.lot,
    stage: lots.every((lot) => lot.stage === 'drawn') ? 'drawn' : 'crude',
    firings: unique(lots.flatMap((lot) => lot.firings)),
    parents: lots.map((lot) => lot.id),
    filled: youngest(lots.map((lot) => lot.filled)),
    drawn: youngest(lots.map((lot) => lot.drawn)),
    bottles: uniqueBottles(lots.flatMap((lot) => lot.bottles)),
    vessel: event.vessel,
    wood: unique(lots.flatMap((lot) => lot.wood)),
    treatedWood: lots.some((lot) => lot.treatedWood),
    distilled: lots.every((lot) => lot.distilled),
    demo: lots.some((lot) => lot.demo),
    volumeMl,
    cameInMl: volumeMl,
    layers: null,
    measured: null,
    lastCheck: null,
    uses: [],
    entries: [entry.id],
  })
  return []
}

/** The rest stays where it was; the parts keep fill date and windows. */
export const split: Write<'split'> = (book, event, entry) => {
  const lot = condensate(book, event.lot)
  if (Array.isArray(lot)) return lot
  const wrong: EntryProblem[] = event.into.flatMap((part) => [...freeId(book, part.lot), ...fits(part.volumeMl, part.vessel.capacityMl)])
  if (event.into.length === 0) wrong.push(problem('missing', 'into'))
  if (new Set(event.into.map((part) => part.lot)).size < event.into.length) wrong.push(problem('same-lot-twice', 'into'))
  const volumeMl = event.into.reduce((sum, part) => sum + part.volumeMl, 0)
  wrong.push(...enough(lot, volumeMl, 'volumeMl'))
  if (wrong.length > 0) return wrong
  book.lots.set(lot.id, poured(lot, volumeMl, entry))
  for (const part of event.into) book.lots.set(part.lot, partOf(lot, part.lot, part.volumeMl, part.vessel, entry.id))
  return []
}

export const move: Write<'move'> = (book, event, entry) => {
  const lot = condensate(book, event.lot)
  if (Array.isArray(lot)) return lot
  const wrong = [...enough(lot, event.lossMl, 'lossMl'), ...fits(lot.volumeMl - event.lossMl, event.vessel.capacityMl)]
  if (wrong.length > 0) return wrong
  book.lots.set(lot.id, { ...poured(lot, event.lossMl, entry), vessel: event.vessel })
  book.balance.stockMl -= event.lossMl
  book.balance.lostMl += event.lossMl
  return []
}

/** A lot poured from another one, with all that is known of its origin. */
export function partOf(lot: CondensateLot, id: LotId, volumeMl: number, vessel: CondensateLot['vessel'], entryId: string): CondensateLot {
  return {
    ...lot,
    id,
    parents: [lot.id],
    vessel,
    volumeMl,
    cameInMl: volumeMl,
    layers: null,
    lastCheck: null,
    uses: [],
    entries: [entryId],
  }
}

function fits(volumeMl: number, capacityMl: number): EntryProblem[] {
  return volumeMl > capacityMl ? [problem('too-large', 'volumeMl', { value: volumeMl, high: capacityMl, unit: 'mL' })] : []
}

function youngest(dates: (DateText | null)[]): DateText | null {
  let last: DateText | null = ''
  for (const date of dates) {
    if (date === null) return null
    if (date > last) last = date
  }
  return last === '' ? null : last
}

function unique(items: string[]): string[] {
  return [...new Set(items)]
}

/** Two parts of one lot that come together again bring the same bottles: the very objects of its filling. */
function uniqueBottles(bottles: Bottle[]): Bottle[] {
  return [...new Set(bottles)]
}
