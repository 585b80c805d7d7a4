/** Of the air that could burn in a slice, the share that does: radiation and gasification hold embers near one temperature (common practice, no source). */
export function embers(tC: number, limitC: number | null): number {
  return limitC === null ? 1 : 1 / (1 + Math.exp((tC - limitC) / 15))
}
