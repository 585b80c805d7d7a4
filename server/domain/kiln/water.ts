import { exp } from './exp.ts'

/** Pressure the kiln works at, kPa (sea level; the altitude shifts boiling by 0.3 K per 100 m, far below the model's error). */
export const airPressureKPa = 101.325

/** Enthalpy of steam at t °C over liquid water at 0 °C, kJ/kg; linear within 5 kJ/kg from 0 to 100 °C (instrument facts 8.1). */
export const steamAtZeroKJ = 2501
export const steamCp = 1.9 // kJ/(kg K), trade facts 9.2.9
export const waterCp = 4.19 // kJ/(kg K), trade facts 9.2.9

/** Antoine's form in natural logarithms: ln kPa = A - B / (C + t); constants for mmHg and powers of ten 8.07131, 1730.63, 233.426. */
export const antoineA = Math.LN10 * 8.07131 + Math.log(0.133322368)
export const antoineB = Math.LN10 * 1730.63
export const antoineC = 233.426

/** Saturation pressure of water, kPa, by the Antoine form: within 0.6 % of IF97 from 10 to 100 °C (instrument facts 8.1). */
export function saturationKPa(celsius: number): number {
  return exp(antoineA - antoineB / (antoineC + celsius))
}

/** Heat that evaporation takes at t °C, kJ/kg. */
export function latentKJ(celsius: number): number {
  return steamAtZeroKJ + (steamCp - waterCp) * celsius
}

/** Molar masses 18 and 29 (30 with much CO2). */
export const waterOverAir = 0.622

/** Water the gas can hold at a vapour pressure, kg per kg of dry gas. */
export function humidity(vapourKPa: number): number {
  return (waterOverAir * vapourKPa) / (airPressureKPa - vapourKPa)
}
