import { type PlainKiln, type Three, zones } from './kiln.ts'

export const stepS = 10

/** Water's saturation pressure, kPa, after Tetens (instrument facts 8.1: within 0.8 % to 100 °C). */
export function saturationKpa(c: number): number {
  const t = Math.min(Math.max(c, -20), 140)
  return 0.61078 * Math.exp((17.27 * t) / (t + 237.3))
}

export interface Zone {
  surfaceC: number
  coreC: number
  wallC: number
  earthC: number
  dryKg: number
  waterKg: number
  wood: Three
  charKg: number
  heldAcidKg: number
  heldTarKg: number
}

/** What leaves the drum in a second, kg/s, and how warm. */
export interface Gas {
  c: number
  dry: number
  water: number
  acid: number
  tar: number
  made: number
}

export function loadZones(kiln: PlainKiln, chance: { normal(): number }, shares: Three): Zone[] {
  return Array.from({ length: zones }, () => {
    const dryKg = (kiln.dryKg / zones) * Math.exp(0.1 * chance.normal())
    const waterKg = dryKg * (kiln.moisture / (1 - kiln.moisture)) * Math.exp(0.15 * chance.normal())
    const wood: Three = [dryKg * shares[0], dryKg * shares[1], dryKg * shares[2]]
    const c = kiln.airC
    return { surfaceC: c, coreC: c, wallC: c, earthC: c, dryKg, waterKg, wood, charKg: 0, heldAcidKg: 0, heldTarKg: 0 }
  })
}

// one lumped reaction a component, 1/s and J/mol: fitted by eye to the onsets of trade facts 1.1.10-1.1.11
const kinetics: [rate: number, energy: number, shiftShare: number][] = [
  [1.2e9, 118e3, 1],
  [1.0e12, 158e3, 1],
  [2e3, 68e3, 0.6],
]

/** The gas passes one zone: gives heat, takes or leaves water by the dew point, takes what breaks down, leaves some of it behind. */
export function passZone(kiln: PlainKiln, zone: Zone, gas: Gas, airC: number, sealed: boolean): void {
  const flow = gas.dry * 1050 + gas.water * 1950 + (gas.acid + gas.tar) * 1500 + gas.made * 1200 + 1e-6
  const after = zone.surfaceC + (gas.c - zone.surfaceC) * Math.exp((-kiln.exchange * kiln.gasKgS * 1050 * 0.8) / flow)
  const given = flow * (gas.c - after)
  const toWall = (kiln.wallWK / zones) * (0.5 * (gas.c + zone.surfaceC) - zone.wallC)
  const toEarth = kiln.earthWK * 0.12 * (zone.wallC - zone.earthC)
  zone.wallC += (stepS / ((20 * 490) / zones)) * (toWall - toEarth - ((kiln.earthWK * 0.315) / zones) * (zone.wallC - airC))
  zone.earthC += (stepS / kiln.earthJK) * (toEarth - (0.5 / zones) * (zone.earthC - airC))
  const dried = sealed ? 0 : dry(kiln, zone, gas)
  gas.water += dried
  const capacity = (zone.wood[0] + zone.wood[1] + zone.wood[2]) * 1500 + zone.charKg * 1200 + zone.waterKg * 4190
  const heat = breakDown(kiln, zone, gas)
  holdBack(kiln, zone, gas)
  const inward = kiln.surfaceToCore * zone.dryKg * 2.2 * (zone.surfaceC - zone.coreC)
  zone.surfaceC += (stepS / (capacity / 2)) * (given - dried * 2.35e6 - toWall * 0.6 - inward + heat / 2)
  zone.coreC += (stepS / (capacity / 2)) * (inward + heat / 2)
  zone.surfaceC = Math.min(Math.max(zone.surfaceC, -10), 900)
  gas.c = after
}

/** kg/s of water from the wood; negative where the gas is over its dew point. */
function dry(kiln: PlainKiln, zone: Zone, gas: Gas): number {
  const moles = gas.water / 0.018 + gas.dry / 0.029 + gas.made / 0.03 + gas.acid / 0.06 + gas.tar / 0.12 + 1e-12
  const partKpa = (gas.water / 0.018 / moles) * 101.3
  const activity = 1 - Math.exp(-zone.waterKg / zone.dryKg / 0.08)
  let drive = activity * saturationKpa(Math.min(zone.surfaceC, 105)) - partKpa
  if (zone.surfaceC > 99.5) drive = Math.max(drive, (zone.surfaceC - 99.5) * 6 * activity)
  const rate = Math.min(Math.max(drive, -80), 60) * 1.1e-5 * zone.dryKg * Math.sqrt(65 / kiln.pieceMm) * kiln.surfaceToCore
  const moved = Math.max(Math.min(rate, (zone.waterKg / stepS) * 0.8), -gas.water * 0.9)
  zone.waterKg -= moved * stepS
  return moved
}

/** Breakdown of the three components at the mean of surface and core; returns the heat given, W. */
function breakDown(kiln: PlainKiln, zone: Zone, gas: Gas): number {
  const kelvin = Math.min(Math.max((zone.surfaceC + zone.coreC) / 2, 20), 700) + 273.15
  let heat = 0
  kinetics.forEach(([rate, energy, shift], i) => {
    const k = rate * Math.exp(-(energy + shift * kiln.energyShiftJ) / (8.314 * kelvin))
    const gone = ((zone.wood[i] ?? 0) * (1 - Math.exp(-k * stepS))) / stepS
    zone.wood[i] = (zone.wood[i] ?? 0) - gone * stepS
    const share = (name: keyof PlainKiln['yields']) => gone * (kiln.yields[name][i] ?? 0)
    zone.charKg += share('char') * stepS
    gas.acid += share('acid')
    gas.tar += share('tar')
    gas.water += share('water')
    gas.made += Math.max(gone - share('acid') - share('tar') - share('water') - share('char'), 0)
    heat += gone * (i === 0 ? 0.6 : 1.2) * kiln.heatJkg
  })
  return heat
}

/** Cool wood takes tar and acids out of the gas; warmed, it gives them back (of the tar only half: the rest stays as char). */
function holdBack(kiln: PlainKiln, zone: Zone, gas: Gas): void {
  const c = zone.surfaceC
  const tarShare = Math.min((kiln.hold / (1 + Math.exp((c - kiln.tarHeldC) / kiln.tarWidthK))) * (4 / zones), 0.9)
  const acidShare = Math.min(((kiln.hold * 0.8) / (1 + Math.exp((c - kiln.acidHeldC) / 10))) * (3 / zones), 0.9)
  const tar = gas.tar * tarShare
  const acid = gas.acid * acidShare
  zone.heldTarKg += tar * stepS
  zone.heldAcidKg += acid * stepS
  const tarBack = Math.min(zone.heldTarKg / stepS, zone.heldTarKg * Math.min(Math.exp(-12 + (c - kiln.tarHeldC) / 18), 2e-3))
  const acidBack = Math.min(zone.heldAcidKg / stepS, zone.heldAcidKg * Math.min(Math.exp(-8.5 + (c - kiln.acidHeldC) / 12), 3e-3))
  zone.heldTarKg -= tarBack * stepS
  zone.heldAcidKg -= acidBack * stepS
  gas.tar += tarBack / 2 - tar
  gas.acid += acidBack - acid
}
