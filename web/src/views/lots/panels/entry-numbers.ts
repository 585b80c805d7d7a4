import type { LotEvent } from '../../../../../server/contract/lots.ts'

const names = ['volumeMl', 'lossMl', 'lightOilMl', 'vinegarMl', 'tarMl', 'waterMl', 'massG', 'finesG'] as const
export type NumberName = (typeof names)[number]

/** What is typed in litres or kilograms; the rest are small amounts, in mL. */
export const ownUnit: Partial<Record<NumberName, 'volume' | 'mass'>> = { volumeMl: 'volume', massG: 'mass', finesG: 'mass' }

export interface EntryNumber {
  name: NumberName
  /** Which bottle, where there are several. */
  of: number | null
  value: number
}

/** The numbers of an event that a person may have mistyped, in a fixed order. */
export function numbersOf(event: LotEvent): EntryNumber[] {
  if (event.what === 'fill') return event.bottles.map(({ number, volumeMl }) => ({ name: 'volumeMl', of: number, value: volumeMl }))
  const given = event as Partial<Record<NumberName, number>>
  return names.flatMap((name) => (given[name] === undefined ? [] : [{ name, of: null, value: given[name] }]))
}

/** The same event with other numbers, in the same order. */
export function withNumbers<E extends LotEvent>(event: E, values: readonly number[]): E {
  if (event.what === 'fill')
    return { ...event, bottles: event.bottles.map((bottle, place) => ({ ...bottle, volumeMl: values[place] ?? bottle.volumeMl })) }
  const changed = numbersOf(event).map(({ name, value }, place) => [name, values[place] ?? value] as const)
  return { ...event, ...Object.fromEntries(changed) }
}
