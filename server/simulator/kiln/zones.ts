import type { Bed, Weathering } from './bed.ts'
import { CoverRow } from './cover-row.ts'
import { emptyLedger } from './ledger.ts'
import { embers } from './embers.ts'
import type { BedPlan } from './plan.ts'
import type { Stream } from './steam.ts'
import { addTo, capacityFlow, heatFlow, humidity, steamHeat, waterCp } from './steam.ts'
import { components, cracking, rate } from './tables/kinetics.ts'

const slices = 20
const woodCp = 1.55 // kJ/(kg K), trade facts 9.2.5
const charCp = 1.25 // trade facts 9.2.6
const tarCp = 1.9
const fibreSaturation = 0.28 // kg water per kg dry wood, common practice, no source

// What a kilogram of the tar way and of the gas way becomes: tar, acids, water; the rest is gas.
// Chosen so that dry wood gives about 0.2 water, 0.08 acids, 0.14 tar, 0.22 gas (trade facts 3.1.5-3.1.8, 3.4.6).
const tarWay = [
  [0.36, 0.08, 0.3],
  [0.05, 0.35, 0.35],
  [0.6, 0.12, 0.18],
] as const
const gasWay = [
  [0, 0.06, 0.45],
  [0, 0.33, 0.35],
  [0, 0.18, 0.3],
] as const

/** Partial pressure, kPa, at which the heavy half of tar stands over its own film: 1.2 at 200 °C, 0.002 at 80 °C, molar mass 150 (from memory). */
function tarKPa(tC: number): number {
  return Math.exp(25.91 - 8901 / (tC + 273.15)) / 1000
}

/** First family: twenty slices in a row, the wood of each lumped, three components (Miller and Bellan), tar and acids kept by the dew on cold wood. */
export class ZoneBed implements Bed {
  readonly ledger = emptyLedger()
  private readonly heat = new Float64Array(slices)
  private readonly tC = new Float64Array(slices)
  private readonly water = new Float64Array(slices)
  private readonly raw = new Float64Array(slices * 3)
  private readonly active = new Float64Array(slices * 3)
  private readonly char = new Float64Array(slices)
  private readonly formed = new Float64Array(slices)
  private readonly film = new Float64Array(slices)
  private readonly sour = new Float64Array(slices)
  private readonly covers: CoverRow
  private readonly dryAtStart: number
  private warmest: number
  private readonly along: number
  private readonly mistHeld: number
  private readonly plan: BedPlan

  constructor(plan: BedPlan) {
    this.plan = plan
    const { dryKg, moistureDb, shares, startC } = plan.charge
    this.dryAtStart = dryKg / slices
    this.warmest = startC
    this.along = (plan.alongKWK * slices) / 12
    this.mistHeld = 1 - Math.exp((Math.log(1 - plan.mistHeld) * 12) / slices)
    this.covers = new CoverRow(plan, slices)
    for (let i = 0; i < slices; i++) {
      this.water[i] = (dryKg * moistureDb) / slices
      for (let c = 0; c < 3; c++) this.raw[i * 3 + c] = (dryKg * shares[c]!) / slices
      this.tC[i] = startC
      this.heat[i] = startC * this.capacity(i)
    }
  }

  private wood(i: number): number {
    let sum = 0
    for (let c = i * 3; c < i * 3 + 3; c++) sum += this.raw[c]! + this.active[c]!
    return sum
  }

  private capacity(i: number): number {
    return this.wood(i) * woodCp + this.char[i]! * charCp + this.water[i]! * waterCp + (this.film[i]! + this.sour[i]!) * tarCp
  }

  step(dtS: number, gas: Stream, fireC: number, weather: Weathering): void {
    const ledger = this.ledger
    ledger.gasInKg += (gas.dry + gas.vapour + gas.acid + gas.tar) * dtS
    ledger.gasInKJ += heatFlow(gas) * dtS
    const fire = this.plan.fireToFrontKWK * Math.max(0, fireC - this.tC[0]!)
    this.heat[0]! += fire * dtS
    ledger.fireKJ += fire * dtS
    this.warmest = -300
    for (let i = 0; i < slices; i++) {
      this.breakDown(i, dtS, gas)
      this.ripen(i, dtS, gas)
      this.burn(i, dtS, gas)
      this.exchange(i, dtS, gas)
      const { fromWoodKJ, lostKJ } = this.covers.take(i, dtS, gas, this.tC[i]!, weather)
      this.heat[i]! -= fromWoodKJ
      ledger.lostKJ += lostKJ
    }
    for (let i = 0; i + 1 < slices; i++) {
      const flow = this.along * (this.tC[i]! - this.tC[i + 1]!) * dtS
      this.heat[i]! -= flow
      this.heat[i + 1]! += flow
    }
    for (let i = 0; i < slices; i++) {
      this.tC[i] = this.heat[i]! / this.capacity(i)
      if (this.tC[i]! > this.warmest) this.warmest = this.tC[i]!
    }
    ledger.gasOutKg += (gas.dry + gas.vapour + gas.acid + gas.tar) * dtS
    ledger.gasOutKJ += heatFlow(gas) * dtS
  }

  private breakDown(i: number, dtS: number, gas: Stream): void {
    const t = this.tC[i]!
    if (t < 120) return
    let tar = 0
    let acid = 0
    let water = 0
    let dry = 0
    let newChar = 0
    for (let c = 0; c < 3; c++) {
      const k = components[c]!
      const at = i * 3 + c
      const woken = this.raw[at]! * (1 - Math.exp(-rate(k.activation, t) * dtS))
      this.raw[at]! -= woken
      this.active[at]! += woken
      const kTar = rate(k.tar, t)
      const kChar = rate(k.char, t)
      const gone = this.active[at]! * (1 - Math.exp(-(kTar + kChar) * dtS))
      if (gone <= 0) continue
      this.active[at]! -= gone
      const asTar = (gone * kTar) / (kTar + kChar)
      const asGas = (gone - asTar) * (1 - k.charShare)
      newChar += gone - asTar - asGas
      const [t1, a1, w1] = tarWay[c]!
      const [t2, a2, w2] = gasWay[c]!
      tar += asTar * t1 + asGas * t2
      acid += asTar * a1 + asGas * a2
      water += asTar * w1 + asGas * w2
      dry += asTar * (1 - t1 - a1 - w1) + asGas * (1 - t2 - a2 - w2)
    }
    // deposited tar that gets hot turns to char in part
    const baked = this.film[i]! * (1 - Math.exp(-dtS * 2e-4 * this.plan.tarToChar * Math.exp((Math.min(t, 450) - 250) / 60)))
    this.film[i]! -= baked
    this.char[i]! += newChar + baked
    this.formed[i]! += newChar + baked
    const volatiles = tar + acid + water + dry
    // the steam leaves as steam: its latent heat is part of the measured heat of breakdown
    const measured = newChar * this.plan.charHeat - volatiles * this.plan.volatileHeat
    const heat = measured + 2501 * water
    const before = capacityFlow(gas) * gas.tempC
    addTo(gas, t, dry / dtS, water / dtS, acid / dtS, tar / dtS)
    const carried = (capacityFlow(gas) * gas.tempC - before) * dtS + 2501 * water
    this.heat[i]! += heat - carried
    this.ledger.breakdownKJ += measured
    this.ledger.steamMadeKJ += 2501 * water
    // tar that passes hot wood cracks: about two seconds in a slice at kiln draught, less at more flow
    const cracked = gas.tar * (1 - Math.exp(-rate(cracking, Math.min(t, 650)) * Math.min(20, 0.016 / Math.max(1e-4, gas.dry))))
    gas.tar -= cracked
    gas.dry += cracked
    const now = capacityFlow(gas)
    // cracking keeps the enthalpy: only the heat capacity of the mixture changes
    gas.tempC = (gas.tempC * (now + cracked * 0.72)) / now
  }

  /** Charcoal loses volatile matter as it gets hotter: yield 36 % at 350 °C, 30 at 450, 27 at 550 (trade facts 3.1.5-3.1.7). */
  private ripen(i: number, dtS: number, gas: Stream): void {
    const t = this.tC[i]!
    if (t < 340) return
    const keeps = this.formed[i]! * (1 - 0.28 * Math.min(1, (t - 340) / 230))
    const gone = Math.max(0, this.char[i]! - keeps) * (1 - Math.exp(-dtS / 2400))
    this.char[i]! -= gone
    const before = capacityFlow(gas) * gas.tempC
    addTo(gas, t, gone / dtS, 0, 0, 0)
    this.heat[i]! -= (capacityFlow(gas) * gas.tempC - before) * dtS
  }

  private burn(i: number, dtS: number, gas: Stream): void {
    const t = this.tC[i]!
    if (gas.air <= 1e-9 || t < 230) return
    const used = gas.air * 0.6 * (1 / (1 + Math.exp((320 - t) / 18))) * embers(t, this.plan.embersC)
    // 0.087 kg of carbon per kg of air, 32.8 MJ per kg of carbon (from memory)
    // under its ash the last of a slice burns no further
    const carbon = Math.min(Math.max(0, this.char[i]! - 0.06 * this.dryAtStart), 0.087 * used * dtS)
    gas.air -= used
    this.char[i]! -= carbon
    const heat = carbon * 32800
    const before = capacityFlow(gas) * gas.tempC
    addTo(gas, t, carbon / dtS, 0, 0, 0)
    this.heat[i]! += heat - (capacityFlow(gas) * gas.tempC - before) * dtS
    this.ledger.burntKJ += heat
  }

  /** Heat, steam, acids and tar between the gas and the wood of a slice. */
  private exchange(i: number, dtS: number, gas: Stream): void {
    const t = this.tC[i]!
    const flow = capacityFlow(gas)
    const units = this.plan.gasToWoodKWK / slices / Math.max(1e-7, flow)
    const reach = 1 - Math.exp(-units)
    const given = flow * (gas.tempC - t) * reach
    const solid = this.wood(i) + this.char[i]!
    const moisture = this.water[i]! / Math.max(1e-6, solid)
    const wet = Math.min(1, moisture / fibreSaturation)
    const activity = wet >= 1 ? 1 : 1 - (1 - wet) * (1 - wet)
    // what is bound deep in thick pieces leaves slowly
    const inner = 1 + (1 - wet) * 60 * this.plan.charge.pieceM
    const steamReach = gas.dry * (1 - Math.exp(-units / inner))
    const inX = gas.vapour / Math.max(1e-9, gas.dry)
    const capacity = this.capacity(i)
    const latent = steamHeat(t) - waterCp * t
    // one unknown, the slice's temperature at the end of the step: heat in = warming + evaporating (Newton, bounded)
    let rise = 0
    let off = 0
    for (let n = 0; n < 4; n++) {
      off = steamReach * (humidity(t + rise, activity) - inX)
      const slope = steamReach * (humidity(t + rise + 0.05, activity) - inX) - off
      const error = (rise * capacity) / dtS - given + latent * off
      rise -= error / (capacity / dtS + (latent * slope) / 0.05)
      rise = Math.max(-15, Math.min(15, rise))
    }
    off = Math.min(steamReach * (humidity(t + rise, activity) - inX), (0.7 * this.water[i]!) / dtS)
    off = Math.max(off, -0.95 * gas.vapour)
    gas.tempC = flow > 1e-9 ? gas.tempC - given / flow : t
    this.heat[i]! += given * dtS
    this.sours(i, dtS, gas, units, off)
    if (off >= 0) {
      this.heat[i]! -= off * steamHeat(t) * dtS
      addTo(gas, t, 0, off, 0, 0)
    } else {
      this.heat[i]! -= off * steamHeat(gas.tempC) * dtS
      gas.vapour += off
    }
    this.water[i] = Math.max(0, this.water[i]! - off * dtS)
    this.films(i, dtS, gas, reach)
  }

  /** Acids seek the share that stands over the water of this slice. */
  private sours(i: number, dtS: number, gas: Stream, units: number, off: number): void {
    const share = this.sour[i]! / (this.water[i]! + this.sour[i]! + 1e-5)
    const steam = gas.vapour + Math.max(0, off)
    const moved = (this.plan.acidVolatility * share * steam - gas.acid) * (1 - Math.exp(-units * this.plan.acidExchange))
    const wetOnly = this.water[i]! < 1e-4 && moved < 0 ? 0 : moved
    this.shift(i, dtS, gas, Math.min(wetOnly, (0.7 * this.sour[i]!) / dtS), 'acid')
  }

  /** Tar above its dew point settles, in part, on what is colder; a film that gets hot again goes back into the gas. */
  private films(i: number, dtS: number, gas: Stream, reach: number): void {
    const t = this.tC[i]!
    const p = Math.min(60, tarKPa(t + this.plan.tarDewShiftK))
    // mole fraction p / P, molar mass 150 against 29 of the gas with its steam
    const stands = ((gas.dry + gas.vapour) * p * (150 / 29)) / (101.3 - p)
    const moved = gas.tar > stands ? -(gas.tar - stands) * this.mistHeld : (stands - gas.tar) * reach
    this.shift(i, dtS, gas, Math.min(moved, (0.3 * this.film[i]!) / dtS), 'tar')
  }

  private shift(i: number, dtS: number, gas: Stream, off: number, what: 'acid' | 'tar'): void {
    const held = what === 'acid' ? this.sour : this.film
    const before = capacityFlow(gas) * gas.tempC
    if (off >= 0) addTo(gas, this.tC[i]!, 0, 0, what === 'acid' ? off : 0, what === 'tar' ? off : 0)
    else gas[what] += off
    this.heat[i]! -= (capacityFlow(gas) * gas.tempC - before) * dtS
    held[i] = Math.max(0, held[i]! - off * dtS)
  }

  wallC(place: number): number {
    return this.covers.wallC(place)
  }

  skinC(place: number): number {
    return this.covers.skinC(place)
  }

  coreC(): number {
    return this.tC[slices / 2]!
  }

  hottestC(): number {
    return Math.max(this.warmest, this.covers.hottestC())
  }

  charred(): { mean: number; least: number } {
    let sum = 0
    let least = 1
    for (let i = 0; i < slices; i++) {
      const done = 1 - this.wood(i) / this.dryAtStart
      sum += done / slices
      if (done < least) least = done
    }
    return { mean: sum, least }
  }

  solids(): { woodKg: number; charKg: number; waterKg: number; heldKg: number } {
    let woodKg = 0
    let charKg = 0
    let waterKg = 0
    let heldKg = 0
    for (let i = 0; i < slices; i++) {
      woodKg += this.wood(i)
      charKg += this.char[i]!
      waterKg += this.water[i]!
      heldKg += this.film[i]! + this.sour[i]!
    }
    return { woodKg, charKg, waterKg, heldKg }
  }

  storedKJ(): number {
    return this.heat.reduce((a, x) => a + x, 0) + this.covers.heatKJ()
  }
}
