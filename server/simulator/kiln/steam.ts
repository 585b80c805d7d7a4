// Water in the gas. Saturation: IAPWS-IF97 equation 30 (instrument facts 8.1); heats linearised (8.1: within 5 kJ/kg to 100 °C).

export const atmosphereKPa = 101.325
/** Mass ratio of water to dry gas at equal mole numbers; dry-gas molar mass 30 (trade facts 8). */
const massRatio = 18 / 30
export const dryGasCp = 1.08
export const steamCp = 1.88
export const organicCp = 1.8
export const waterCp = 4.19
const latentAtZero = 2501

/** Saturation pressure, kPa, 0..360 °C. */
export function saturationKPa(tC: number): number {
  const t = Math.min(360, Math.max(0.01, tC)) + 273.15
  const theta = t - 0.23855557567849 / (t - 650.17534844798)
  const a = theta * theta + 1167.0521452767 * theta - 724213.16703206
  const b = -17.073846940092 * theta * theta + 12020.82470247 * theta - 3232555.0322333
  const c = 14.91510861353 * theta * theta - 4823.2657361591 * theta + 405113.40542057
  const root = (2 * c) / (-b + Math.sqrt(b * b - 4 * a * c))
  return root * root * root * root * 1000
}

/** kg of water per kg of dry gas over a surface of the given activity; held at 96 % steam, where it would run to infinity. */
export function humidity(tC: number, activity: number): number {
  const p = Math.min(0.96 * atmosphereKPa, activity * saturationKPa(tC))
  return (massRatio * p) / (atmosphereKPa - p)
}

/** kJ per kg of steam, from liquid at 0 °C. */
export function steamHeat(tC: number): number {
  return latentAtZero + steamCp * tC
}

/** What flows along the gas path: kg/s each, temperature °C. `air` is the part of `dry` that can still burn something. */
export interface Stream {
  dry: number
  vapour: number
  acid: number
  tar: number
  air: number
  tempC: number
}

/** Heat capacity flow, kW/K. */
export function capacityFlow(s: Stream): number {
  return s.dry * dryGasCp + s.vapour * steamCp + (s.acid + s.tar) * organicCp
}

/** Enthalpy flow from gas and liquid water at 0 °C, kW. */
export function heatFlow(s: Stream): number {
  return capacityFlow(s) * s.tempC + latentAtZero * s.vapour
}

/** Mixes what a solid at `fromC` gives off into the stream. */
export function addTo(s: Stream, fromC: number, dry: number, vapour: number, acid: number, tar: number): void {
  const before = capacityFlow(s)
  const added = dry * dryGasCp + vapour * steamCp + (acid + tar) * organicCp
  s.dry += dry
  s.vapour += vapour
  s.acid += acid
  s.tar += tar
  if (before + added > 0) s.tempC = (before * s.tempC + added * fromC) / (before + added)
}

/** Takes a share out of a stream. */
export function split(gas: Stream, share: number): Stream {
  const part = { ...gas, dry: gas.dry * share, vapour: gas.vapour * share, acid: gas.acid * share, tar: gas.tar * share, air: 0 }
  gas.dry -= part.dry
  gas.vapour -= part.vapour
  gas.acid -= part.acid
  gas.tar -= part.tar
  return part
}

/** The whole of one stream into another. */
export function join(gas: Stream, other: Stream): void {
  addTo(gas, other.tempC, other.dry, other.vapour, other.acid, other.tar)
}

/** The same share of both goes over to the other. */
export function trade(a: Stream, b: Stream, share: number): void {
  const fromB = split(b, share)
  const fromA = split(a, (share * b.dry) / Math.max(1e-9, a.dry))
  join(a, fromB)
  join(b, fromA)
}
