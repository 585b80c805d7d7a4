import { kAboveZero, kBelowZero, kBump } from './tables/type-k.ts'

/** Voltage of type K against 0 °C, mV (instrument facts 1.2). */
export function typeKmV(tC: number): number {
  const row = tC < 0 ? kBelowZero : kAboveZero
  let e = 0
  for (let i = row.length - 1; i >= 0; i--) e = e * tC + (row[i] ?? 0)
  if (tC < 0) return e
  const off = tC - kBump.a2
  return e + kBump.a0 * Math.exp(kBump.a1 * off * off)
}

/** What a chip with a straight line of 41.276 µV/K says (instrument facts 2.1): its cold junction plus the voltage over that line. */
export function straightLineC(hotC: number, coldJunctionC: number): number {
  return coldJunctionC + (typeKmV(hotC) - typeKmV(coldJunctionC)) / 0.041276
}

export function quantise(value: number, lsb: number): number {
  return Math.round(value / lsb) * lsb
}
