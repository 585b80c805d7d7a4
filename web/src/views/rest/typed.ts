/** What was typed as a number; a comma counts as a point, the long minus of print as the short one, and nothing at all is no number (the rules then say what to enter). */
export function typedNumber(text: string): number {
  const trimmed = text.trim().replace(',', '.').replace('−', '-')
  return trimmed === '' ? Number.NaN : Number(trimmed)
}

/** The same for a member that may be left out. */
export function typedOrNothing(text: string): number | undefined {
  return text.trim() === '' ? undefined : typedNumber(text)
}
