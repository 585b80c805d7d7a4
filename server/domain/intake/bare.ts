/** The form of hand-made firmware, `{"outlet":31.2,"wall":352}`, told as the SenML pack that it stands for: °C, now (wire format, rule 10). */
export function packOfBare(object: Record<string, unknown>): unknown[] {
  return Object.entries(object).map(([n, v]) => (typeof v === 'string' ? { n, u: 'Cel', vs: v } : { n, u: 'Cel', v }))
}
