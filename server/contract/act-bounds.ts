/** What may be logged, from and to. They keep nonsense out and are no limits of the trade. Masses kg, temperatures °C, volumes L. */
export const actBounds = {
  massKg: { low: 0.1, high: 100_000 },
  moisturePct: { low: 0, high: 95 },
  pieceMm: { low: 0.1, high: 2000 },
  groundC: { low: -60, high: 1500 },
  litres: { low: 0, high: 1000 },
  charcoalKg: { low: 0, high: 100_000 },
  readingC: { low: -50, high: 3000 },
} as const

export interface Bounds {
  low: number
  high: number
}
