import type { Checked } from '../../contract/entry-problems.ts'
import type { CondensateLot } from '../../contract/lots.ts'
import { accept, outside, problem, refuse } from '../entered/number.ts'
import { condensate, freeId } from './book.ts'
import type { Write } from './book.ts'
import { restOf } from './rest.ts'
import { partOf } from './vessels.ts'

/** Layers read with a rule may add up to this share more than the book holds, and at least 200 mL (common practice, no source). */
const readingTolerance = 0.05
const leastToleranceMl = 200

/** Layers as measured replace what the book held; the difference is booked, so that the balance stays closed. */
export const layers: Write<'layers'> = (book, event, entry) => {
  const lot = condensate(book, event.lot)
  if (Array.isArray(lot)) return lot
  const { lightOilMl, vinegarMl, tarMl } = event
  const sumMl = lightOilMl + vinegarMl + tarMl
  const highMl = lot.volumeMl + Math.max(leastToleranceMl, Math.floor(lot.volumeMl * readingTolerance))
  if (sumMl > highMl) return [problem('layers-exceed-lot', 'layers', { value: sumMl, high: lot.volumeMl, unit: 'mL' })]
  book.balance.measuredDifferenceMl += sumMl - lot.volumeMl
  book.balance.stockMl += sumMl - lot.volumeMl
  book.lots.set(lot.id, {
    ...lot,
    volumeMl: sumMl,
    layers: { lightOilMl, vinegarMl, tarMl, measured: entry.date },
    measured: { lightOilMl, vinegarMl, tarMl },
    entries: [...lot.entries, entry.id],
  })
  return []
}

/** Vinegar goes to a lot of its own: `drawn` after the rest, still `crude` when it was drawn early. Oil and tar leave the stock for their tins. */
export const draw: Write<'draw'> = (book, event, entry) => {
  const lot = condensate(book, event.lot)
  if (Array.isArray(lot)) return lot
  if (lot.layers === null) return [problem('layers-not-measured', 'layer', { lot: lot.id })]
  const key = layerKey[event.layer]
  const takenMl = event.volumeMl + event.lossMl
  if (takenMl > lot.layers[key])
    return [problem('more-than-there-is', 'volumeMl', { lot: lot.id, value: takenMl, high: lot.layers[key], unit: 'mL' })]
  const { into } = event
  if (event.layer === 'vinegar' && into === undefined) return [problem('missing', 'into')]
  if (event.layer === 'vinegar' && into !== undefined) {
    const taken = freeId(book, into.lot)
    if (taken.length > 0) return taken
    if (event.volumeMl > into.vessel.capacityMl)
      return [problem('too-large', 'volumeMl', { value: event.volumeMl, high: into.vessel.capacityMl, unit: 'mL' })]
    const fresh = partOf(lot, into.lot, event.volumeMl, into.vessel, entry.id)
    book.lots.set(into.lot, restedOn(lot, entry.date, entry.clockSure) ? { ...fresh, stage: 'drawn', drawn: entry.date } : fresh)
  } else if (event.layer === 'tar') book.balance.tarTinMl += event.volumeMl
  else book.balance.oilTinMl += event.volumeMl
  const outOfStockMl = event.layer === 'vinegar' ? event.lossMl : takenMl
  book.balance.stockMl -= outOfStockMl
  book.balance.lostMl += event.lossMl
  book.lots.set(lot.id, {
    ...lot,
    volumeMl: lot.volumeMl - takenMl,
    layers: { ...lot.layers, [key]: lot.layers[key] - takenMl },
    entries: [...lot.entries, entry.id],
  })
  return []
}

const layerKey = { 'light-oil': 'lightOilMl', vinegar: 'vinegarMl', tar: 'tarMl' } as const

function restedOn(lot: CondensateLot, date: string, clockSure: boolean): boolean {
  const rest = restOf(lot, { date, clockSure })
  return rest.state === 'rested' || rest.state === 'six-months'
}

/** Heights of the layers from the bottom, mm, in a vessel with straight walls. @returns whole mL of each. */
export function layersFromHeights(
  tarTopMm: number,
  vinegarTopMm: number,
  oilTopMm: number,
  insideDiameterMm: number,
): Checked<{ lightOilMl: number; vinegarMl: number; tarMl: number }> {
  const wrong = [
    ...outside('insideDiameterMm', insideDiameterMm, 20, 2000, 'mm'),
    ...outside('tarTopMm', tarTopMm, 0, 3000, 'mm'),
    ...outside('vinegarTopMm', vinegarTopMm, 0, 3000, 'mm'),
    ...outside('oilTopMm', oilTopMm, 0, 3000, 'mm'),
  ]
  if (wrong.length > 0) return refuse(...wrong)
  if (vinegarTopMm < tarTopMm) return refuse(problem('too-small', 'vinegarTopMm', { value: vinegarTopMm, low: tarTopMm, unit: 'mm' }))
  if (oilTopMm < vinegarTopMm) return refuse(problem('too-small', 'oilTopMm', { value: oilTopMm, low: vinegarTopMm, unit: 'mm' }))
  const mlPerMm = (Math.PI * insideDiameterMm * insideDiameterMm) / 4000
  const tarMl = Math.round(tarTopMm * mlPerMm)
  const vinegarMl = Math.round(vinegarTopMm * mlPerMm) - tarMl
  return accept({ tarMl, vinegarMl, lightOilMl: Math.round(oilTopMm * mlPerMm) - tarMl - vinegarMl })
}
