import { Chance } from '../../../../server/simulator/chance.ts'
import { type Gas, loadZones, passZone, saturationKpa, stepS, type Zone } from './gas.ts'
import { drawKiln, type PlainKiln, type Three, zones } from './kiln.ts'

/** One plain firing in minutes; index 0 is `leadMinutes` before lighting. */
export interface PlainFiring {
  kiln: PlainKiln
  leadMinutes: number
  fireboxC: number[]
  wallC: number[]
  outletC: number[]
  smokeC: number[]
  fed: boolean[]
  wetted: boolean[]
  /** kg of condensate in the minute: water, acids, tar. */
  drip: Three[]
  charred: number[]
  sealedMinute: number
}

const leadMinutes = 30
const longestMinutes = 16 * 60

export function burnPlain(seed: string): PlainFiring {
  const chance = new Chance(`plain/${seed}`)
  const kiln = drawKiln(chance)
  const cellulose = Math.min(Math.max(0.46 + 0.04 * chance.normal(), 0.3), 0.6)
  const hemicellulose = Math.min(Math.max(0.27 + 0.04 * chance.normal(), 0.15), 0.4)
  const wood = loadZones(kiln, chance, [hemicellulose, cellulose, 1 - cellulose - hemicellulose])
  const whole = wood.map((zone): Three => [...zone.wood])
  const fire = { c: kiln.airC, fuel: 1, gust: 0, nextFedS: chance.between(0, 60) }
  const cloths = { wet: 0, lastS: -1e9, nextS: kiln.firstWetS }
  const probes = { wall: kiln.airC, smoke: kiln.airC, outlet: kiln.airC }
  let outletC = kiln.airC
  const out: PlainFiring = {
    kiln,
    leadMinutes,
    fireboxC: [],
    wallC: [],
    outletC: [],
    smokeC: [],
    fed: [],
    wetted: [],
    drip: [],
    charred: [],
    sealedMinute: -1,
  }
  for (let minute = -leadMinutes; minute < longestMinutes && out.sealedMinute < 0; minute++) {
    const caught: Three = [0, 0, 0]
    let fed = false
    let wetted = false
    const airC = kiln.airC + kiln.airSwingK * Math.sin((Math.PI * Math.min(Math.max(minute / 60, 0), 12)) / 12)
    for (let s = 0; s < 60; s += stepS) {
      const atS = minute * 60 + s
      if (atS >= 0) {
        fed = feed(kiln, fire, chance, atS) || fed
        burnFuel(kiln, fire, chance, airC)
        wetted = wet(kiln, cloths, chance, atS) || wetted
      }
      const gas = fireGas(kiln, fire, wood, airC)
      for (const zone of wood) passZone(kiln, zone, gas, airC, false)
      const smokeC = airC + (gas.c - airC) * kiln.chimney
      const rained = kiln.kind === 'rain' && atS > kiln.troubleS
      const pipeWK = rained ? kiln.wetWK : kiln.dryWK + (kiln.wetWK - kiln.dryWK) * cloths.wet
      outletC = cool(gas, smokeC, outletC, airC, pipeWK, cloths.wet > 0.2 ? 4 : 0)
      if (atS >= 0) collect(gas, outletC).forEach((kgS, i) => (caught[i] = (caught[i] ?? 0) + kgS * stepS))
      probes.smoke += (stepS / kiln.smokeLagS) * (smokeC - probes.smoke)
      probes.outlet += (stepS / kiln.outletLagS) * (outletC - probes.outlet)
      probes.wall += (stepS / kiln.wallLagS) * (wallAt(kiln, wood, airC) - probes.wall)
    }
    out.fireboxC.push(fire.c)
    out.wallC.push(probes.wall)
    out.outletC.push(probes.outlet)
    out.smokeC.push(probes.smoke)
    out.fed.push(fed)
    out.wetted.push(wetted)
    out.drip.push(caught)
    const charred = charredShare(wood, whole)
    out.charred.push(charred)
    const given = kiln.kind === 'never-catches' && minute > 312
    if (charred > kiln.charredShare || minute * 60 > kiln.longestS || given) out.sealedMinute = minute + leadMinutes
  }
  if (out.sealedMinute < 0) out.sealedMinute = out.wallC.length - 1
  return out
}

interface FireNow {
  c: number
  fuel: number
  gust: number
  nextFedS: number
}

function feed(kiln: PlainKiln, fire: FireNow, chance: Chance, atS: number): boolean {
  const dying = kiln.kind === 'fire-dies' && atS > kiln.troubleS && atS < kiln.troubleS + kiln.troubleForS
  const given = kiln.kind === 'never-catches' && atS > kiln.goneS
  if (atS < fire.nextFedS || dying || given) return false
  fire.fuel = 1
  fire.nextFedS = atS + kiln.fuelS * Math.exp(0.3 * chance.normal())
  return true
}

function burnFuel(kiln: PlainKiln, fire: FireNow, chance: Chance, airC: number): void {
  fire.fuel *= Math.exp(-stepS / kiln.fuelS)
  fire.gust += (-stepS / 600) * fire.gust + Math.sqrt((2 * stepS) / 600) * 0.04 * chance.normal()
  const low = fire.fuel <= Math.exp(-2.2)
  const power = low ? fire.fuel * 1.8 : Math.min(Math.max(1 - 2.5 * kiln.fuelSwing + 4 * kiln.fuelSwing * fire.fuel, 0), 1.5)
  const target = airC + (kiln.fireC - airC) * Math.min(Math.max(power * (1 + fire.gust), 0), 1.3)
  fire.c += (stepS / (kiln.fireLagS / 2 + 120)) * (target - fire.c)
}

function wet(kiln: PlainKiln, cloths: { wet: number; lastS: number; nextS: number }, chance: Chance, atS: number): boolean {
  const neglected = kiln.kind === 'cloths-neglected' && atS > kiln.troubleS && atS < kiln.troubleS + 3600
  const now = atS >= cloths.nextS && !neglected
  if (now) {
    cloths.lastS = atS
    cloths.nextS = atS + kiln.wetEveryS * Math.exp(0.25 * chance.normal())
  }
  cloths.wet = Math.min(Math.max(1 - (atS - cloths.lastS - 0.6 * kiln.clothS) / (0.6 * kiln.clothS), 0), 1)
  return now
}

function fireGas(kiln: PlainKiln, fire: FireNow, wood: Zone[], airC: number): Gas {
  const draught = Math.sqrt(Math.min(Math.max((fire.c - airC) / (kiln.fireC - airC), 0), 1.5))
  const flow = kiln.gasKgS * (0.4 + 0.6 * draught) * (1 + kiln.gust * fire.gust)
  const water = (flow * kiln.gasWater) / (1 + kiln.gasWater)
  const front = Math.min(Math.max(((wood[0]?.surfaceC ?? 0) - 220) / 100, 0), 1)
  return { c: fire.c + kiln.frontHeatK * front, dry: flow - water, water, acid: 0, tar: 0, made: 0 }
}

/** Outlet of the condenser by heat balance, a few steps towards it from where it stood, °C. */
function cool(gas: Gas, smokeC: number, before: number, airC: number, pipeWK: number, wetK: number): number {
  const dry = gas.dry + gas.made + 1e-9
  let c = before
  for (let i = 0; i < 3; i++) {
    const condensed = Math.max(gas.water - uncaught(dry, c), 0)
    const cp = dry * 1050 + gas.water * 1950
    const brought = cp * (smokeC - c) + condensed * 2.38e6 + (gas.acid + gas.tar) * 5e5
    const lost = pipeWK * (0.25 * Math.max(smokeC, c) + 0.75 * c - (airC - wetK))
    const stiff = cp + pipeWK * 0.75 + (dry / 0.029) * 0.018 * (saturationKpa(c) / 101.3) * 0.05 * 2.38e6 + 1e-6
    c = Math.min(Math.max(c + (0.5 * (brought - lost)) / stiff, airC - 6), Math.max(smokeC, airC))
  }
  return c
}

/** Water that stays in a gas saturated at `c`, kg/s (instrument facts 8.3). */
function uncaught(dryKgS: number, c: number): number {
  const share = Math.min(saturationKpa(c) / 101.3, 0.95)
  return (dryKgS / 0.029) * (share / (1 - share)) * 0.018
}

function collect(gas: Gas, outletC: number): Three {
  const lost = uncaught(gas.dry + gas.made + 1e-9, outletC)
  const acids = gas.acid * 0.9 * Math.min(Math.max(1 - (0.5 * lost) / (gas.water + 1e-9), 0), 1)
  return [Math.max(gas.water - lost, 0), acids, gas.tar * 0.9]
}

function wallAt(kiln: PlainKiln, wood: Zone[], airC: number): number {
  const low = Math.min(Math.floor(kiln.wallPlace), zones - 1)
  const share = kiln.wallPlace - low
  const a = wood[low]
  const b = wood[Math.min(low + 1, zones - 1)]
  if (!a || !b) return airC
  const wall = a.wallC * (1 - share) + b.wallC * share
  const surface = a.surfaceC * (1 - share) + b.surfaceC * share
  return (1 - kiln.wallAir) * ((1 - kiln.wallWood) * wall + kiln.wallWood * surface) + kiln.wallAir * airC
}

function charredShare(wood: Zone[], whole: Three[]): number {
  let soft = 0
  let softWhole = 0
  let lignin = 0
  let ligninWhole = 0
  wood.forEach((zone, i) => {
    const before = whole[i] ?? [0, 0, 0]
    soft += zone.wood[0] + zone.wood[1]
    softWhole += before[0] + before[1]
    lignin += zone.wood[2]
    ligninWhole += before[2]
  })
  return 0.85 * (1 - soft / softWhole) + (0.15 * (1 - lignin / ligninWhole)) / 0.8
}
