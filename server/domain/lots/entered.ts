import type { EntryProblem } from '../../contract/entry-problems.ts'
import type { Bottle, CharcoalValues, CheckValues, LotEvent, Vessel } from '../../contract/lots.ts'
import { outside, problem } from '../entered/number.ts'

/** A ship's tank; above it somebody has typed a wrong unit. */
const mostMl = 100_000_000
const mostG = 1_000_000_000

/** Whether the numbers of an event can be what they are called. Says of each what to enter. */
export function enteredWell(event: LotEvent): EntryProblem[] {
  switch (event.what) {
    case 'fill':
      return [...named('lot', event.lot), ...event.bottles.flatMap(bottle), ...vessel(event.vessel)]
    case 'join':
      return [
        ...named('lot', event.lot),
        ...event.from.flatMap((part) => whole('volumeMl', part.volumeMl, 1, mostMl)),
        ...vessel(event.vessel),
      ]
    case 'split':
      return event.into.flatMap((part) => [
        ...named('lot', part.lot),
        ...whole('volumeMl', part.volumeMl, 1, mostMl),
        ...vessel(part.vessel),
      ])
    case 'move':
      return [...whole('lossMl', event.lossMl, 0, mostMl), ...vessel(event.vessel)]
    case 'layers':
      return [
        ...whole('lightOilMl', event.lightOilMl, 0, mostMl),
        ...whole('vinegarMl', event.vinegarMl, 0, mostMl),
        ...whole('tarMl', event.tarMl, 0, mostMl),
      ]
    case 'draw':
      return [
        ...whole('volumeMl', event.volumeMl, 1, mostMl),
        ...whole('lossMl', event.lossMl, 0, mostMl),
        ...(event.into === undefined ? [] : [...named('into', event.into.lot), ...vessel(event.into.vessel)]),
      ]
    case 'use':
      return [...whole('volumeMl', event.volumeMl, 1, mostMl), ...whole('waterMl', event.waterMl, 1, mostMl)]
    case 'loss':
    case 'give':
      return whole('volumeMl', event.volumeMl, 1, mostMl)
    case 'check':
      return checkValues(event.values)
    case 'charcoal':
      return [...named('lot', event.lot), ...whole('massG', event.massG, 1, mostG), ...whole('finesG', event.finesG, 0, mostG)]
    case 'charcoal-check':
      return charcoalValues(event.values)
    case 'charcoal-out':
      return whole('massG', event.massG, 1, mostG)
    case 'store':
      return event.pileC === undefined ? [] : outside('pileC', event.pileC, -40, 400, '°C')
    case 'air':
    case 'void':
      return []
  }
}

/** pH of a watery liquid, density in g/mL, shares in %. */
export function checkValues(values: CheckValues): EntryProblem[] {
  const wrong: EntryProblem[] = []
  if (values.ph !== undefined) wrong.push(...outside('ph', values.ph, 0, 14))
  if (values.acidityPct !== undefined) wrong.push(...outside('acidityPct', values.acidityPct, 0, 60, '%'))
  if (values.dissolvedTarPct !== undefined) wrong.push(...outside('dissolvedTarPct', values.dissolvedTarPct, 0, 100, '%'))
  if (values.density !== undefined) {
    const { gPerMl, atC, hydrometerC } = values.density
    if (gPerMl >= 900 && gPerMl <= 1300) wrong.push(problem('density-in-kg-per-m3', 'density', { value: gPerMl, wanted: gPerMl / 1000 }))
    else wrong.push(...outside('density', gPerMl, 0.9, 1.3, 'g/mL'))
    wrong.push(...outside('densityAtC', atC, 0, 60, '°C'))
    if (hydrometerC !== undefined) wrong.push(...outside('hydrometerC', hydrometerC, 0, 60, '°C'))
  }
  return wrong
}

function charcoalValues(values: CharcoalValues): EntryProblem[] {
  const { bulkKgPerM3, ...shares } = values
  const wrong = Object.entries(shares).flatMap(([field, value]) => (value === undefined ? [] : outside(field, value, 0, 100, '%')))
  if (bulkKgPerM3 !== undefined) wrong.push(...outside('bulkKgPerM3', bulkKgPerM3, 50, 900, 'kg/m³'))
  return wrong
}

function bottle(one: Bottle): EntryProblem[] {
  const wrong = [...whole('number', one.number, 0, 10_000), ...whole('volumeMl', one.volumeMl, 1, mostMl)]
  if (one.to < one.from) wrong.push(problem('too-small', 'to', { value: one.to, low: one.from }))
  if (one.smoke !== null) {
    wrong.push(...outside('smokeLowC', one.smoke.lowC, -40, 600, '°C'), ...outside('smokeHighC', one.smoke.highC, -40, 600, '°C'))
    if (one.smoke.highC < one.smoke.lowC)
      wrong.push(problem('too-small', 'smokeHighC', { value: one.smoke.highC, low: one.smoke.lowC, unit: '°C' }))
  }
  return wrong
}

function vessel(one: Vessel): EntryProblem[] {
  const wrong = [...named('vessel', one.name), ...whole('capacityMl', one.capacityMl, 1, mostMl)]
  if (one.heightMm !== undefined) wrong.push(...outside('heightMm', one.heightMm, 10, 5000, 'mm'))
  return wrong
}

function named(field: string, text: string): EntryProblem[] {
  return text.trim() === '' || text.length > 60 ? [problem('missing', field, { high: 60 })] : []
}

function whole(field: string, value: number, low: number, high: number): EntryProblem[] {
  if (!Number.isSafeInteger(value)) return [problem('not-a-number', field, { low, high, unit: field.endsWith('G') ? 'g' : 'mL' })]
  return outside(field, value, low, high, field.endsWith('G') ? 'g' : 'mL')
}
