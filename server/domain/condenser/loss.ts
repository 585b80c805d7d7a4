// What a warm condenser lets through: the gas leaves saturated, so its temperature says what it carries off.

const n = [
  1167.0521452767, -724213.16703206, -17.073846940092, 12020.82470247, -3232555.0322333, 14.91510861353, -4823.2657361591, 405113.40542057,
  -0.23855557567849, 650.17534844798,
] as const

/** Saturation pressure of water, kPa, from 0 to 374 °C: IAPWS-IF97 equation 30 (instrument facts 8.1). */
export function saturationKPa(celsius: number): number {
  const t = celsius + 273.15
  const theta = t + n[8] / (t - n[9])
  const a = theta * theta + n[0] * theta + n[1]
  const b = n[2] * theta * theta + n[3] * theta + n[4]
  const c = n[5] * theta * theta + n[6] * theta + n[7]
  const root = (2 * c) / (-b + Math.sqrt(b * b - 4 * a * c))
  return root * root * root * root * 1000
}

/** Dry air pressure by altitude, kPa (international standard atmosphere below 11 km). */
export function pressureKPa(altitudeM: number): number {
  return 101.325 * Math.exp(5.2559 * Math.log(1 - altitudeM / 44_330))
}

/** Water left in saturated gas, kg per kg of dry gas of molar mass 30 (trade facts 8, table). Infinity at the boil. */
export function waterLeft(outletC: number, totalKPa: number): number {
  const vapour = saturationKPa(outletC)
  return vapour >= totalKPa ? Infinity : (18.015 / 30) * (vapour / (totalKPa - vapour))
}

/** Condensed fraction of a gas with the mole fraction `vapourIn` of vapour that leaves saturated at `outletC` (instrument facts 8.3). */
export function condensedFraction(vapourIn: number, outletC: number, totalKPa = 101.325): number {
  const out = saturationKPa(outletC) / totalKPa
  if (out >= vapourIn) return 0
  return 1 - out / (1 - out) / (vapourIn / (1 - vapourIn))
}

/** Vapour of a kilogram of dry wood, kg (trade facts 8, table). */
const vapourPerWood = 0.45
/** Dry gas per kg of dry wood: from a tight retort to one with much leaked air (trade facts 8, table). */
const dryGas = { least: 0.25, most: 1 } as const

export interface Share {
  low: number
  high: number
}

/** Share of the vapour that escapes at this outlet temperature; a range, for nobody knows how much gas dilutes it. */
export function lostShare(outletC: number, totalKPa = 101.325): Share {
  const left = waterLeft(outletC, totalKPa)
  const share = (gas: number): number => Math.min(1, (gas * left) / vapourPerWood)
  return { low: share(dryGas.least), high: share(dryGas.most) }
}

/** What dry cloths cost beyond what wet ones lose as well, as a range of the share. */
export function avoidableShare(outletC: number, wetOutletC: number, totalKPa = 101.325): Share {
  const now = lostShare(outletC, totalKPa)
  const wet = lostShare(Math.min(wetOutletC, outletC), totalKPa)
  return { low: now.low - wet.low, high: now.high - wet.high }
}

/** Condensate of a drum while vapour flows, L/h, where no estimate is at hand: 20 to 40 L in 6 to 8 hours (trade facts 3.3, 3.4). */
export const usualFlowLPerH: Share = { low: 2, high: 6 }
