/**
 * Density of water, g/mL, 0 to 40 °C: Tanaka et al., Metrologia 38 (2001) 301, the formula recommended by CIPM (coefficients from memory,
 * checked against tabled values).
 */
export function waterGPerMl(c: number): number {
  const shifted = c - 3.983035
  return (999.97495 * (1 - (shifted * shifted * (c + 301.797)) / (522528.9 * (c + 69.34881)))) / 1000
}

/** Cubic expansion of hydrometer glass, 1/K (ISO 649-2: 25e-6; from memory). */
const glassPerK = 25e-6

/**
 * A density read at one temperature, seen at another. Wood vinegar is water for 80 to 90 %, so it is taken to expand as water does;
 * over 10 K that is right within about 0.001 g/mL.
 * @param hydrometerC the temperature a glass hydrometer was made for; without it the reading counts as the density itself.
 */
export function densityAt(read: { gPerMl: number; atC: number; hydrometerC?: number }, referenceC: number): number {
  const glass = read.hydrometerC === undefined ? 1 : 1 - glassPerK * (read.atC - read.hydrometerC)
  return (read.gPerMl * glass * waterGPerMl(referenceC)) / waterGPerMl(read.atC)
}

/** Mass over volume of a flask, as with a kitchen scale and a measured bottle: the same bottle weighed with water takes its volume out. */
export function densityByBottle(emptyG: number, withWaterG: number, withVinegarG: number, atC: number): number {
  return ((withVinegarG - emptyG) / (withWaterG - emptyG)) * waterGPerMl(atC)
}
