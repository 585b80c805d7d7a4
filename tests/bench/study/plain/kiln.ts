import type { Chance } from '../../../../server/simulator/chance.ts'

// A third, plainer world for learning and trying: drum kilns by yet another hand, in eight zones with a surface and a core each,
// lumped kinetics, and wide chance over everything. It shares no code with server/domain/kiln nor with server/simulator/kiln.
// Orders of magnitude from trade facts 8 and 9; where no source is named the spread is this world's own guess.

export const zones = 8

export interface PlainKiln {
  massKg: number
  moisture: number
  pieceMm: number
  dryKg: number
  airC: number
  airSwingK: number
  /** kg/s of fire gas at full fire, and its water, kg a kg. */
  gasKgS: number
  gasWater: number
  gust: number
  fireC: number
  fuelS: number
  fuelSwing: number
  fireLagS: number
  frontHeatK: number
  exchange: number
  surfaceToCore: number
  wallWK: number
  earthWK: number
  earthJK: number
  energyShiftJ: number
  yields: { acid: Three; tar: Three; water: Three; char: Three }
  heatJkg: number
  hold: number
  tarHeldC: number
  acidHeldC: number
  tarWidthK: number
  wetWK: number
  dryWK: number
  wetEveryS: number
  clothS: number
  firstWetS: number
  kind: PlainKind
  troubleS: number
  troubleForS: number
  goneS: number
  chimney: number
  wallPlace: number
  wallWood: number
  wallLagS: number
  wallAir: number
  smokeLagS: number
  outletLagS: number
  charredShare: number
  longestS: number
}

/** Hemicellulose, cellulose, lignin. */
export type Three = [number, number, number]
export type PlainKind = 'ordinary' | 'fire-dies' | 'cloths-neglected' | 'never-catches' | 'rain'

const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high)

export function drawKiln(chance: Chance): PlainKiln {
  const about = (middle: number, spread: number): number => middle * Math.exp(spread * chance.normal())
  const between = (low: number, high: number): number => chance.between(low, high)
  const massKg = about(80, 0.2)
  const moisture = clamp(0.27 + 0.1 * chance.normal(), 0.08, 0.5)
  const pieceMm = clamp(about(65, 0.3), 25, 130)
  const wetWK = about(75, 0.5)
  const kinds: PlainKind[] = ['ordinary', 'fire-dies', 'cloths-neglected', 'never-catches', 'rain']
  const shares = [0.62, 0.12, 0.1, 0.08, 0.08]
  const dice = chance.uniform()
  let sum = 0
  const kind = kinds.find((_, i) => (sum += shares[i] ?? 0) > dice) ?? 'ordinary'
  return {
    massKg,
    moisture,
    pieceMm,
    dryKg: massKg * (1 - moisture),
    airC: between(5, 32),
    airSwingK: between(0, 8),
    gasKgS: about(0.0046, 0.35),
    gasWater: between(0.04, 0.12),
    gust: between(0, 0.5),
    fireC: clamp(640 + 80 * chance.normal(), 450, 850),
    fuelS: about(840, 0.35),
    fuelSwing: between(0.03, 0.25),
    fireLagS: between(300, 1500),
    frontHeatK: clamp(between(-0.3, 1), 0, 1) * between(8, 72),
    exchange: about(1.1, 0.35) / Math.sqrt(pieceMm / 65),
    surfaceToCore: about(0.9, 0.3) * Math.pow(65 / pieceMm, 1.5),
    wallWK: about(5, 0.4),
    earthWK: about(2.2, 0.5),
    earthJK: (about(60, 0.4) * 900) / zones,
    energyShiftJ: 2500 * chance.normal(),
    yields: {
      acid: [between(0.16, 0.34), between(0.03, 0.11), between(0.02, 0.06)],
      tar: [between(0.01, 0.05), between(0.06, 0.2), between(0.05, 0.17)],
      water: [between(0.2, 0.32), between(0.15, 0.28), between(0.1, 0.2)],
      char: [between(0.22, 0.35), between(0.15, 0.28), between(0.45, 0.6)],
    },
    heatJkg: between(-150e3, 450e3), // trade facts 9.2.3, widened
    hold: between(0.5, 1),
    tarHeldC: between(95, 190),
    acidHeldC: between(90, 125),
    tarWidthK: between(15, 40),
    wetWK,
    dryWK: wetWK * between(0.12, 0.4),
    wetEveryS: about(900, 0.25),
    clothS: about(1080, 0.35),
    firstWetS: between(0.3, 2.4) * 3600,
    kind,
    troubleS: between(1, 6) * 3600,
    troubleForS: between(25, 70) * 60,
    goneS: between(0.5, 2) * 3600,
    chimney: between(0.85, 0.98),
    wallPlace: between(0, zones - 1),
    wallWood: between(0, 0.7),
    wallLagS: about(400, 0.5),
    wallAir: between(0, 0.35),
    smokeLagS: between(20, 90),
    outletLagS: between(20, 120),
    charredShare: between(0.93, 0.985),
    longestS: between(12, 15.3) * 3600,
  }
}
