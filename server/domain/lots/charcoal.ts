import { problem } from '../entered/number.ts'
import { charcoal, freeId } from './book.ts'
import type { Write } from './book.ts'

export const weigh: Write<'charcoal'> = (book, event, entry) => {
  const wrong = freeId(book, event.lot)
  if (event.finesG > event.massG) wrong.push(problem('too-large', 'finesG', { value: event.finesG, high: event.massG, unit: 'g' }))
  if (wrong.length > 0) return wrong
  book.lots.set(event.lot, {
    kind: 'charcoal',
    id: event.lot,
    firings: event.firing === null ? [] : [event.firing],
    drawn: entry.date,
    drawnAt: entry.doneAt,
    clockSure: entry.clockSure,
    massG: event.massG,
    finesG: event.finesG,
    leftG: event.massG,
    wood: event.wood ?? null,
    demo: event.demo ?? false,
    airedAt: null,
    stored: null,
    values: null,
    entries: [entry.id],
  })
  return []
}

export const charcoalCheck: Write<'charcoal-check'> = (book, event, entry) => {
  const lot = charcoal(book, event.lot)
  if (Array.isArray(lot)) return lot
  book.lots.set(lot.id, { ...lot, values: { ...lot.values, ...event.values }, entries: [...lot.entries, entry.id] })
  return []
}

export const air: Write<'air'> = (book, event, entry) => {
  const lot = charcoal(book, event.lot)
  if (Array.isArray(lot)) return lot
  book.lots.set(lot.id, { ...lot, airedAt: entry.doneAt, entries: [...lot.entries, entry.id] })
  return []
}

export const store: Write<'store'> = (book, event, entry) => {
  const lot = charcoal(book, event.lot)
  if (Array.isArray(lot)) return lot
  const stored = { place: event.place, at: entry.doneAt, pileC: event.pileC ?? null }
  book.lots.set(lot.id, { ...lot, stored, entries: [...lot.entries, entry.id] })
  return []
}

export const charcoalOut: Write<'charcoal-out'> = (book, event, entry) => {
  const lot = charcoal(book, event.lot)
  if (Array.isArray(lot)) return lot
  if (event.massG > lot.leftG)
    return [problem('more-than-there-is', 'massG', { lot: lot.id, value: event.massG, high: lot.leftG, unit: 'g' })]
  book.lots.set(lot.id, { ...lot, leftG: lot.leftG - event.massG, entries: [...lot.entries, entry.id] })
  return []
}
