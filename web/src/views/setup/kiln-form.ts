import type { KilnConfig } from '../../../../server/contract/fold.ts'
import type { SetupWords } from '../../words/setup/en.ts'

export type Cover = KilnConfig['cover']
export type Condenser = NonNullable<KilnConfig['condenser']>
/** Bounds of the settings, L; a number outside is said here already, before it is sent. */
export const volumeBounds = { low: 20, high: 20_000 }
const longestName = 80

/** Every problem of the form at once, by field. @param litres what was typed, null while empty, NaN for what is no number */
export function kilnProblems(
  form: { name: string; litres: number | null },
  words: SetupWords,
  shown: (litres: number) => string,
): Partial<Record<'name' | 'volumeL', string>> {
  const { litres, name } = form
  const { low, high } = volumeBounds
  const number = litres === null || Number.isNaN(litres)
  const outside = litres !== null && (litres < low || litres > high)
  return {
    ...(name.length > longestName ? { name: words.kiln.long } : {}),
    ...(number ? { volumeL: words.kiln.number } : outside ? { volumeL: words.kiln.ranges(shown(low), shown(high)) } : {}),
  }
}

/** The short name of one more kiln: it stands in topics and files for ever. */
export function nextKilnId(taken: readonly string[]): string {
  let number = taken.length + 1
  while (taken.includes(`kiln-${number}`)) number += 1
  return `kiln-${number}`
}
