import type { Checked } from '../../contract/entry-problems.ts'
import { accept, problem, refuse } from './number.ts'

/** Units that a person may write; the factor leads to mL, g, mm or m². US customary: NIST SP 811, appendix B. */
const units = {
  volume: { ml: 1, cl: 10, dl: 100, l: 1000, gal: 3785.411784, qt: 946.352946, cup: 236.5882365, 'fl oz': 29.5735295625 },
  mass: { g: 1, kg: 1000, lb: 453.59237, oz: 28.349523125, t: 1_000_000 },
  length: { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 },
  area: { m2: 1, 'm²': 1, ha: 10_000, rai: 1600, acre: 4046.8564224, 'sq ft': 0.09290304 },
} as const
export type QuantityKind = keyof typeof units

/**
 * Reads `20 L`, `2,5 kg`, `500ml`. A bare number is refused: 20 of what?
 * @returns mL, g, mm or m².
 */
export function readQuantity(field: string, kind: QuantityKind, text: string): Checked<number> {
  const match = /^\s*([+-]?\d+(?:[.,]\d+)?)\s*([^\d\s].*?)?\s*$/.exec(text)
  if (match === null) return refuse(problem('not-a-number', field, { given: text.slice(0, 40) }))
  const table: Record<string, number> = units[kind]
  const factor = table[(match[2] ?? '').toLowerCase()]
  if (factor === undefined || !Object.hasOwn(table, (match[2] ?? '').toLowerCase())) {
    return refuse(problem('wrong-unit', field, { given: (match[2] ?? '').slice(0, 20), wanted: Object.keys(table).join(', ') }))
  }
  const value = Number((match[1] ?? '').replace(',', '.')) * factor
  return value >= 0 ? accept(value) : refuse(problem('too-small', field, { value, low: 0 }))
}
