import type { Bed, Weathering } from './bed.ts'
import { CoverRow } from './cover-row.ts'
import { emptyLedger } from './ledger.ts'
import { embers } from './embers.ts'
import type { BedPlan } from './plan.ts'
import type { Stream } from './steam.ts'
import { addTo, capacityFlow, heatFlow, humidity, join, split, steamHeat, trade, waterCp } from './steam.ts'
import type { LumpedScheme } from './tables/kinetics.ts'
import { lumped, rate } from './tables/kinetics.ts'
import { volatileShares } from './yields.ts'

const zones = 6
const shells = 4
const cells = zones * shells
const woodCp = 1.6
const charCp = 1.25
const tarCp = 1.9
const woodKgM3 = 560 // trade facts 10.7-10.10
/** Of a round piece cut into four shells of equal thickness, the outermost first. */
const shellShare = [7 / 16, 5 / 16, 3 / 16, 1 / 16] as const

/** Second family: six zones of round pieces with a hot outside and a cold heart, one-lump kinetics with yield curves, gas that partly passes over the charge. */
export class PieceBed implements Bed {
  readonly ledger = emptyLedger()
  private readonly heat = new Float64Array(cells)
  private readonly tC = new Float64Array(cells)
  private readonly water = new Float64Array(cells)
  private readonly wood = new Float64Array(cells)
  private readonly char = new Float64Array(cells)
  private readonly formed = new Float64Array(cells)
  private readonly film = new Float64Array(zones)
  private readonly sour = new Float64Array(zones)
  private readonly covers: CoverRow
  private readonly inward = new Float64Array(shells)
  private readonly dryCell: Float64Array
  private readonly plan: BedPlan
  private readonly scheme: LumpedScheme

  constructor(plan: BedPlan, scheme: LumpedScheme) {
    this.plan = plan
    this.scheme = scheme
    const { dryKg, moistureDb, startC, pieceM } = plan.charge
    this.covers = new CoverRow(plan, zones)
    this.dryCell = Float64Array.from({ length: cells }, (_, i) => (dryKg / zones) * shellShare[i % shells]!)
    for (let i = 0; i < cells; i++) {
      this.wood[i] = this.dryCell[i]!
      this.water[i] = this.dryCell[i]! * moistureDb
      this.tC[i] = startC
      this.heat[i] = startC * this.capacity(i)
    }
    // conduction from shell to shell of all pieces of a zone, 0.18 W/(m K) for damp wood across the grain (trade facts 9.2.7: 0.1 dry)
    const lengthM = dryKg / zones / woodKgM3 / ((Math.PI * pieceM * pieceM) / 4)
    const thick = pieceM / 2 / shells
    for (let s = 1; s < shells; s++) this.inward[s] = (0.18 * 2 * Math.PI * lengthM * (pieceM / 2 - s * thick)) / thick / 1000
  }

  private capacity(i: number): number {
    const z = (i / shells) | 0
    const held = i % shells === 0 ? (this.film[z]! + this.sour[z]!) * tarCp : 0
    return this.wood[i]! * woodCp + this.char[i]! * charCp + this.water[i]! * waterCp + held
  }

  step(dtS: number, gas: Stream, fireC: number, weather: Weathering): void {
    const ledger = this.ledger
    ledger.gasInKg += (gas.dry + gas.vapour + gas.acid + gas.tar) * dtS
    ledger.gasInKJ += heatFlow(gas) * dtS
    const fire = this.plan.fireToFrontKWK * Math.max(0, fireC - this.tC[0]!)
    this.heat[0]! += fire * dtS
    ledger.fireKJ += fire * dtS
    // what passes over the charge sees wall and top only, and mixes a little at every zone
    const over = split(gas, this.plan.bypass)
    for (let z = 0; z < zones; z++) {
      this.breakDown(z, dtS, gas)
      this.burn(z, dtS, gas)
      this.surface(z, dtS, gas, this.plan.gasToWoodKWK / zones)
      this.top(z, dtS, over)
      trade(gas, over, 0.06)
      this.inside(z, dtS)
      const { fromWoodKJ, lostKJ } = this.covers.take(z, dtS, gas, this.tC[z * shells]!, weather)
      this.heat[z * shells]! -= fromWoodKJ
      ledger.lostKJ += lostKJ
    }
    join(gas, over)
    for (let z = 0; z + 1 < zones; z++) {
      const flow = this.plan.alongKWK * 0.5 * (this.tC[z * shells]! - this.tC[(z + 1) * shells]!) * dtS
      this.heat[z * shells]! -= flow
      this.heat[(z + 1) * shells]! += flow
    }
    for (let i = 0; i < cells; i++) this.tC[i] = this.heat[i]! / this.capacity(i)
    ledger.gasOutKg += (gas.dry + gas.vapour + gas.acid + gas.tar) * dtS
    ledger.gasOutKJ += heatFlow(gas) * dtS
  }

  /** Wood of every shell to char and volatiles; charcoal ripens; the volatiles join the gas at the surface's temperature. */
  private breakDown(z: number, dtS: number, gas: Stream): void {
    const way = lumped[this.scheme]
    for (let i = z * shells; i < (z + 1) * shells; i++) {
      const t = this.tC[i]!
      if (t < 130) continue
      const gone = { dry: 0, water: 0, acid: 0, tar: 0 }
      let measured = 0
      if (this.wood[i]! > 1e-7) {
        const kChar = rate(way.char, t)
        const k = kChar + rate(way.gas, t) + rate(way.tar, t)
        const lost = this.wood[i]! * (1 - Math.exp(-k * dtS))
        const newChar = (lost * kChar) / k
        const volatiles = lost - newChar
        const y = volatileShares(t, this.plan.yields)
        this.wood[i]! -= lost
        this.char[i]! += newChar
        this.formed[i]! += newChar
        gone.water = volatiles * y.water
        gone.acid = volatiles * y.acid
        gone.tar = volatiles * y.tar
        gone.dry = volatiles - gone.water - gone.acid - gone.tar
        measured = newChar * this.plan.charHeat - volatiles * this.plan.volatileHeat
      }
      if (t > 340) {
        const keeps = this.formed[i]! * (1 - 0.28 * Math.min(1, (t - 340) / 230)) // trade facts 3.1.5-3.1.7
        const ripened = Math.max(0, this.char[i]! - keeps) * (1 - Math.exp(-dtS / 2400))
        this.char[i]! -= ripened
        gone.dry += ripened
      }
      const carried = this.give(dtS, gas, this.tC[z * shells]!, gone) + 2501 * gone.water
      this.heat[i]! += measured + 2501 * gone.water - carried
      this.ledger.breakdownKJ += measured
      this.ledger.steamMadeKJ += 2501 * gone.water
    }
  }

  /** Adds kg to the gas; returns the sensible heat they carry, kJ. */
  private give(dtS: number, gas: Stream, fromC: number, kg: { dry: number; water: number; acid: number; tar: number }): number {
    const before = capacityFlow(gas) * gas.tempC
    addTo(gas, fromC, kg.dry / dtS, kg.water / dtS, kg.acid / dtS, kg.tar / dtS)
    return (capacityFlow(gas) * gas.tempC - before) * dtS
  }

  private burn(z: number, dtS: number, gas: Stream): void {
    const i = z * shells
    const t = this.tC[i]!
    if (gas.air <= 1e-9 || t < 230) return
    const used = ((gas.air * 0.85) / (1 + Math.exp((320 - t) / 18))) * embers(t, this.plan.embersC)
    const carbon = Math.min(Math.max(0, this.char[i]! - 0.06 * this.dryCell[i]!), 0.087 * used * dtS)
    gas.air -= used
    this.char[i]! -= carbon
    const heat = carbon * 32800
    this.heat[i]! += heat - this.give(dtS, gas, t, { dry: carbon, water: 0, acid: 0, tar: 0 })
    this.ledger.burntKJ += heat
  }

  /** Heat, steam, acids and tar between a gas and the outsides of a zone's pieces. */
  private surface(z: number, dtS: number, gas: Stream, conductance: number): void {
    const i = z * shells
    const t = this.tC[i]!
    const flow = capacityFlow(gas)
    if (flow < 1e-9) return
    const reach = 1 - Math.exp(-conductance / flow)
    const given = flow * (gas.tempC - t) * reach
    gas.tempC -= given / flow
    this.heat[i]! += given * dtS
    const moisture = this.water[i]! / Math.max(1e-6, this.wood[i]! + this.char[i]!)
    const wet = Math.min(1, moisture / 0.25)
    const activity = wet * (2 - wet)
    const pull = gas.dry * reach
    const x = humidity(t, activity)
    const slope = (humidity(t + 0.2, activity) - x) / 0.2
    const latent = 2350
    // the surface cools as it dries and warms as dew falls: damped by that answer within the step
    let off = (pull * (x - gas.vapour / Math.max(1e-9, gas.dry))) / (1 + (dtS * latent * pull * slope) / this.capacity(i))
    off = Math.max(-0.95 * gas.vapour, Math.min(off, (0.6 * this.water[i]!) / dtS))
    this.takeWater(z, i, dtS, gas, off)
    // acids go into wet surfaces and come out with the steam
    const into = gas.acid * (1 - Math.exp(-this.plan.acidExchange * 0.35 * wet))
    this.swap(z, dtS, gas, -into, 'acid')
    if (wet < 0.02) this.swap(z, dtS, gas, this.sour[z]! / 600, 'acid')
    // tar settles on what is colder than its dew point, and leaves again when that gets hot
    const cold = 1 / (1 + Math.exp((t - 162 - this.plan.tarDewShiftK) / 16))
    this.swap(z, dtS, gas, -gas.tar * cold * (1 - (1 - this.plan.mistHeld) * (1 - this.plan.mistHeld)), 'tar')
    if (t > 150) {
      this.swap(z, dtS, gas, this.film[z]! * 1.5e-5 * Math.exp((Math.min(t, 400) - 150) / 35), 'tar')
      const baked = this.film[z]! * (1 - Math.exp(-dtS * 2e-4 * this.plan.tarToChar * Math.exp((Math.min(t, 450) - 250) / 60)))
      this.film[z]! -= baked
      this.char[i]! += baked
      this.formed[i]! += baked
    }
  }

  private takeWater(z: number, i: number, dtS: number, gas: Stream, off: number): void {
    const t = this.tC[z * shells]!
    const before = this.water[i]!
    if (off >= 0) {
      this.heat[i]! -= off * steamHeat(t) * dtS
      addTo(gas, t, 0, off, 0, 0)
      const share = before > 0 ? Math.min(0.6, (off * dtS * this.plan.acidVolatility) / (this.waterOf(z) + 1e-4)) : 0
      this.swap(z, dtS, gas, (this.sour[z]! * share) / dtS, 'acid')
    } else {
      this.heat[i]! -= off * steamHeat(gas.tempC) * dtS
      gas.vapour += off
    }
    this.water[i] = Math.max(0, before - off * dtS)
  }

  private waterOf(z: number): number {
    return this.water[z * shells]! + 0.3 * this.water[z * shells + 1]!
  }

  /** kg/s from the pieces (positive) or onto them. */
  private swap(z: number, dtS: number, gas: Stream, off: number, what: 'acid' | 'tar'): void {
    const held = what === 'acid' ? this.sour : this.film
    const kgS = Math.min(off, (0.5 * held[z]!) / dtS)
    const before = capacityFlow(gas) * gas.tempC
    if (kgS >= 0) addTo(gas, this.tC[z * shells]!, 0, 0, what === 'acid' ? kgS : 0, what === 'tar' ? kgS : 0)
    else gas[what] += kgS
    this.heat[z * shells]! -= (capacityFlow(gas) * gas.tempC - before) * dtS
    held[z] = Math.max(0, held[z]! - kgS * dtS)
  }

  /** The gas over the charge: a weak exchange with the tops of the pieces. */
  private top(z: number, dtS: number, over: Stream): void {
    const flow = capacityFlow(over)
    if (flow < 1e-9) return
    const given = flow * (over.tempC - this.tC[z * shells]!) * (1 - Math.exp((-0.25 * this.plan.gasToWoodKWK) / zones / flow))
    over.tempC -= given / flow
    this.heat[z * shells]! += given * dtS
    // what is above its dew point in a gas that cools there rains onto the pieces
    const most = over.dry * humidity(over.tempC, 1)
    if (over.vapour > most) {
      const rain = over.vapour - most
      this.heat[z * shells]! += rain * steamHeat(over.tempC) * dtS
      over.vapour = most
      this.water[z * shells]! += rain * dtS
    }
  }

  /** Heat and water inside the pieces; steam from the heart condenses in colder shells or comes out. */
  private inside(z: number, dtS: number): void {
    for (let s = shells - 1; s > 0; s--) {
      const i = z * shells + s
      const outer = i - 1
      const charred = this.char[outer]! / (this.char[outer]! + this.wood[outer]! + 1e-9)
      // two lumps seek their common temperature: exact for any step
      const c0 = this.capacity(outer)
      const c1 = this.capacity(i)
      const joint = (c0 * c1) / (c0 + c1)
      const flow = joint * (1 - Math.exp((-this.inward[s]! * (1 - 0.35 * charred) * dtS) / joint)) * (this.tC[outer]! - this.tC[i]!)
      this.heat[outer]! -= flow
      this.heat[i]! += flow
      const m1 = this.water[i]! / this.dryCell[i]!
      const m0 = this.water[outer]! / this.dryCell[outer]!
      const warm = Math.min(1, Math.max(0.02, (this.tC[i]! - 20) / 80))
      const d = this.plan.charge.pieceM
      // moisture moves down its gradient, faster when warm: 2e-9 m²/s at 100 °C (from memory)
      const moved = Math.max(0, m1 - m0) * this.dryCell[i]! * (1 - Math.exp((-dtS * 2e-9 * warm * 64) / (d * d)))
      this.pass(i, outer, moved, this.tC[i]! * waterCp)
      this.boil(i, outer)
    }
  }

  private boil(i: number, outer: number): void {
    const water = this.water[i]!
    if (water < 1e-6) return
    const bound = Math.min(1, water / (0.25 * this.dryCell[i]!))
    const boilsC = 99 + 45 * (1 - bound)
    const now = this.heat[i]! / this.capacity(i)
    if (now <= boilsC) return
    const kg = Math.min(water * 0.5, ((now - boilsC) * this.capacity(i)) / 2257)
    this.pass(i, outer, kg, steamHeat(now))
  }

  private pass(from: number, to: number, kg: number, heatKJkg: number): void {
    this.water[from]! -= kg
    this.water[to]! += kg
    this.heat[from]! -= kg * heatKJkg
    this.heat[to]! += kg * heatKJkg
  }

  wallC(place: number): number {
    return this.covers.wallC(place)
  }

  skinC(place: number): number {
    return this.covers.skinC(place)
  }

  coreC(): number {
    return this.tC[(zones / 2) * shells + shells - 1]!
  }

  hottestC(): number {
    let most = this.covers.hottestC()
    for (let i = 0; i < cells; i++) if (this.tC[i]! > most) most = this.tC[i]!
    return most
  }

  charred(): { mean: number; least: number } {
    let mean = 0
    let least = 1
    for (let z = 0; z < zones; z++) {
      let left = 0
      for (let i = z * shells; i < (z + 1) * shells; i++) left += this.wood[i]!
      const done = 1 - (left * zones) / this.plan.charge.dryKg
      mean += done / zones
      if (done < least) least = done
    }
    return { mean, least }
  }

  solids(): { woodKg: number; charKg: number; waterKg: number; heldKg: number } {
    const sum = (xs: Float64Array) => xs.reduce((a, x) => a + x, 0)
    return { woodKg: sum(this.wood), charKg: sum(this.char), waterKg: sum(this.water), heldKg: sum(this.film) + sum(this.sour) }
  }

  storedKJ(): number {
    return this.heat.reduce((a, x) => a + x, 0) + this.covers.heatKJ()
  }
}
