import type { CondenserKind, Range } from '../../contract/plan.ts'

/**
 * Crude condensate caught, % of the dry wood. A bare pipe in air: double-drum kiln, 4.95 to 7.35 % of wood (J. Penelitian Hasil Hutan 2011).
 * Wet cloths: from clay-kiln practice, 10 to 20 %, to a retort heated from outside, 25 to 40 % (sources of the Japanese trade): cloths that are
 * kept wet let as little pass as running water does, 22 to 31 % (Nurhayati; Floresta e Ambiente), and what is caught holds water of the charge.
 */
export const caughtPctOfDryWood: Record<CondenserKind, Range> = {
  'air-pipe': { low: 5, likely: 6.2, high: 10 },
  'wet-cloths': { low: 10, likely: 20, high: 40 },
  'water-jacket': { low: 22, likely: 26, high: 31 },
}

/** Middle layer over crude after the rest: 60 to 70 % in trade use, 50 to 75 % in Brazilian reports (Campos 2007; Miyasaka). */
export const usableShare: Range = { low: 0.5, likely: 0.65, high: 0.75 }

/** Mean density of crude, kg/L, middle of 1.005 to 1.016 (Theapparat et al. 2018). */
export const crudeKgPerL = 1.01

export function expectCrudeL(dryKg: number, condenser: CondenserKind): Range {
  const share = caughtPctOfDryWood[condenser]
  const litres = (pct: number): number => (dryKg * pct) / 100 / crudeKgPerL
  return { low: litres(share.low), likely: litres(share.likely), high: litres(share.high) }
}

export function expectVinegarL(crude: Range): Range {
  return { low: crude.low * usableShare.low, likely: crude.likely * usableShare.likely, high: crude.high * usableShare.high }
}
