export interface YieldCurves {
  /** Peak share of acids in the volatiles, and where it lies, °C. */
  acidPeak: number
  acidAtC: number
  /** Middle of the rise of the tar share, °C, and its height. */
  tarFromC: number
  tarHeight: number
}

/**
 * What the volatiles of a moment consist of at the wood's temperature: water first, acids about 270 °C, tar above 300
 * (bands of trade facts 1.1.7 and 1.1.11; heights set so that the whole gives the liquids of 3.1.5-3.1.8).
 */
export function volatileShares(tC: number, y: YieldCurves): { water: number; acid: number; tar: number } {
  const water = tC < 200 ? 0.6 : tC < 300 ? 0.6 - 0.003 * (tC - 200) : Math.max(0.22, 0.3 - 0.0008 * (tC - 300))
  const off = (tC - y.acidAtC) / 55
  const acid = 0.03 + (y.acidPeak - 0.03) * Math.exp(-off * off)
  const tar = 0.03 + y.tarHeight / (1 + Math.exp((y.tarFromC - tC) / 18))
  const sum = water + acid + tar
  // at least a tenth is gas
  const fit = sum > 0.9 ? 0.9 / sum : 1
  return { water: water * fit, acid: acid * fit, tar: tar * fit }
}
