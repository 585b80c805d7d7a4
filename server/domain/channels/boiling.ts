import { pressureKPa, saturationKPa } from '../condenser/loss.ts'

/** The saturation line's ends, °C. */
const freezingC = 0
const criticalC = 373

/** Where water boils, °C, at a pressure: the saturation line of IF97 turned round. The upper point of a field calibration. */
export function boilingC(kPa: number): number {
  let low = freezingC
  let high = criticalC
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2
    if (saturationKPa(middle) < kPa) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Where water boils at a height above the sea, m, on a day of usual weather: 0.03 K for every hPa that the day is off (instrument facts 3.2). */
export const boilingAtC = (altitudeM: number): number => boilingC(pressureKPa(altitudeM))
