import type { Measures } from '../../lib/words/measures.ts'

/** What was typed as a number; a comma counts as a point, the long minus of print as the short one, and nothing at all is no number (the rules then say what to enter). */
export function typedNumber(text: string): number {
  const trimmed = text.trim().replace(',', '.').replace('−', '-')
  return trimmed === '' ? Number.NaN : Number(trimmed)
}

/** The same for a member that may be left out. */
export function typedOrNothing(text: string): number | undefined {
  return text.trim() === '' ? undefined : typedNumber(text)
}

/** What is kept in mL or g, as it is typed: litres and kilograms are what hands think in, or the unit that this person chose. */
export function ownText(what: 'volume' | 'mass', mlOrG: number, measures: Measures): string {
  return String(measures.own(what, mlOrG / 1000))
}

/** Whole mL or g of what was typed in the person's own unit. */
export function typedOwn(what: 'volume' | 'mass', text: string, measures: Measures): number {
  const typed = typedNumber(text)
  return Math.round(1000 * (what === 'volume' ? measures.typedLitres(typed) : measures.typedKilograms(typed)))
}
