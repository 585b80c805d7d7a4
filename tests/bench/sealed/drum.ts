import { type DrumPlan, slices } from './drum-plan.ts'
import { type Leak, leaksKgS } from './leak.ts'
import type { Night } from './night.ts'

// A third hand's drum for nights alone: ten slices; in each the charge in three rings, the steel, the earth above and the ground below.
// One implicit step a minute; heat goes along the drum through charge, steel and earth.
// It shares no code with server/domain/kiln nor with the kilns of server/simulator.
// What differs from drum to drum, and from day to day, is drawn in `drum-plan.ts`.

const rings = 3
const soil = 5
const steelAt = rings
const earthAt = rings + 1
const groundAt = earthAt + soil
const nodes = groundAt + soil
const stepS = 60
const lengthM = 0.86
const radiusM = 0.285
const areaM2 = (2 * Math.PI * radiusM * lengthM + 2 * Math.PI * radiusM ** 2) / slices
// 0.087 kg of carbon a kilogram of air, 32.8 MJ a kilogram of carbon (from memory)
const airHeatJkg = 0.087 * 32.8e6

export class Drum {
  readonly c = new Float64Array(slices * nodes)
  private readonly heat = new Float64Array(slices * nodes)
  private readonly give = new Float64Array(nodes)
  private readonly made = new Float64Array(slices)
  private readonly charKg = new Float64Array(slices)
  private readonly afterJ = new Float64Array(slices)
  private readonly endC = new Float64Array(slices)
  private readonly frontH = new Float64Array(slices)
  /** From a slice to the next, W/K: of each ring, of the steel, of each layer of earth. */
  private readonly alongWK = new Float64Array(nodes)
  private readonly endsWK: number
  private readonly outerWK: number
  private readonly embersC: number
  private readonly rampH: number
  readonly litH: number
  /** Dry wood that the charcoal was made of, kg. */
  readonly woodKg: number
  private readonly d = new Float64Array(nodes)
  private readonly r = new Float64Array(nodes)
  burningW = 0

  constructor(plan: DrumPlan, night: Night) {
    this.litH = plan.litH
    this.rampH = plan.rampH
    this.embersC = plan.embersC
    this.woodKg = plan.woodKg
    // by the section of each ring; a third to each had made thin cores swing without bound
    for (let k = 0; k < rings; k++) this.alongWK[k] = (plan.bedWK * (2 * k + 1)) / (rings * rings)
    // 20 kg of steel (trade facts 9.2.9-9.2.10) lead about as much as the bed
    const steelM2 = 20 / 7850 / (2 * lengthM * radiusM * Math.PI + 2 * Math.PI * radiusM ** 2)
    this.alongWK[steelAt] = (plan.steelWmK * steelM2 * 2 * Math.PI * radiusM * slices) / lengthM
    this.endsWK = plan.endsWK
    this.endC.set(plan.endC)
    this.frontH.set(plan.frontH)
    this.charKg.set(plan.charKg)
    this.afterJ.set(plan.afterJ)
    for (let s = 0; s < slices; s++)
      for (let k = 0; k < rings; k++) this.heat[s * nodes + k] = ((plan.jK[s] ?? 0) * (2 * k + 1)) / (rings * rings)
    // along the radius
    for (let i = 1; i < rings; i++) {
      const at = (k: number): number => Math.max(0.25, k + 0.5) / rings
      this.give[i - 1] = (plan.chargeWmK * 2 * Math.PI * lengthM) / slices / Math.log(at(i) / at(i - 1))
    }
    this.give[rings - 1] = 1 / (1 / (plan.rimWm2K * areaM2) + radiusM / (2 * rings) / (plan.chargeWmK * areaM2))
    this.soil(earthAt, plan.above, plan.coverM, plan.earthWmK, plan.earthJm3K)
    this.soil(groundAt, 1 - plan.above, plan.groundM, plan.groundWmK, plan.earthJm3K)
    this.outerWK = plan.outerWm2K * areaM2 * plan.above
    for (let s = 0; s < slices; s++) this.heat[s * nodes + steelAt] = (20 * 490) / slices // trade facts 9.2.9-9.2.10
    const startC = night.airC(-this.litH)
    this.c.fill(startC)
    for (let s = 0; s < slices; s++)
      for (let k = groundAt; k < nodes; k++) this.c[s * nodes + k] = startC + ((night.deepC - startC) * (k - groundAt)) / soil
    this.lit(night)
  }

  private soil(from: number, share: number, depthM: number, wMK: number, jM3K: number): void {
    const area = areaM2 * share
    let sum = 0
    for (let k = 0; k < soil; k++) sum += 1.6 ** k
    let before = 0
    for (let k = 0; k < soil; k++) {
      const thick = (depthM * 1.6 ** k) / sum
      this.alongWK[from + k] = (wMK * thick * share * 2 * Math.PI * radiusM * slices) / lengthM
      for (let s = 0; s < slices; s++) this.heat[s * nodes + from + k] = jM3K * thick * area
      // give[from + k] is the way from the node before it (the steel before the first)
      this.give[from + k] = (wMK * area) / (thick / 2 + before)
      before = thick / 2
    }
    this.deep[from === earthAt ? 0 : 1] = (wMK * area) / before
  }
  /** From the outermost layer to its surface, and from the lowest to the deep ground, W/K. */
  private readonly deep: [number, number] = [0, 0]

  /** Hours of fire: the rings are led by the gas, drum and earth follow. */
  private lit(night: Night): void {
    for (let m = 0; m < this.litH * 60; m++) {
      const hour = m / 60
      for (let s = 0; s < slices; s++) {
        const front = this.frontH[s] ?? 0
        const end = this.endC[s] ?? 0
        const wet = Math.min(88, end)
        const early = 20 + (wet - 20) * Math.min(1, hour / Math.max(0.3, front * 0.5))
        const c = hour < front ? early : wet + (end - wet) * Math.min(1, (hour - front) / Math.min(this.rampH, this.litH - front + 0.01))
        for (let k = 0; k < rings; k++) this.c[s * nodes + k] = c - (rings - 1 - k) * 4
        this.solve(s, night, hour - this.litH, true)
      }
      this.alongTheDrum(steelAt)
      this.note(hour - this.litH)
    }
  }
  /** Steel of every slice and the first earth, minute by minute while it burnt. */
  readonly litMinutes: { hour: number; steel: Float32Array; earth: Float32Array }[] = []

  private note(hour: number): void {
    if (hour < -4.01) return
    const pick = (k: number): Float32Array => Float32Array.from({ length: slices }, (_, s) => this.c[s * nodes + k] ?? 0)
    this.litMinutes.push({ hour, steel: pick(steelAt), earth: pick(earthAt) })
  }

  /** One minute of the sealed kiln. */
  step(night: Night, leak: Leak | null, hour: number): void {
    this.burn(leak, hour)
    for (let s = 0; s < slices; s++) {
      const after = ((this.afterJ[s] ?? 0) * stepS) / 5400
      this.afterJ[s] = (this.afterJ[s] ?? 0) - after
      this.made[s] = (this.made[s] ?? 0) + after / stepS
      this.solve(s, night, hour, false)
    }
    this.alongTheDrum(0)
  }

  /** From slice to slice; `from` leaves out the rings where they are led. */
  private alongTheDrum(from: number): void {
    const { c, heat, alongWK } = this
    for (let s = 0; s + 1 < slices; s++)
      for (let k = from; k < nodes; k++) {
        const [i, j] = [s * nodes + k, (s + 1) * nodes + k]
        const joule = (alongWK[k] ?? 0) * ((c[i] ?? 0) - (c[j] ?? 0)) * stepS
        c[i] = (c[i] ?? 0) - joule / (heat[i] ?? 1)
        c[j] = (c[j] ?? 0) + joule / (heat[j] ?? 1)
      }
  }

  /** Air goes from where it comes in towards the farther end, and burns what is hot enough on its way. */
  private burn(leak: Leak | null, hour: number): void {
    this.made.fill(0)
    this.burningW = 0
    let air = leaksKgS(leak, hour)
    if (leak === null || air <= 0) return
    const from = Math.min(slices - 1, Math.floor(leak.place * slices))
    const way = leak.place > 0.5 ? -1 : 1
    for (let s = from; s >= 0 && s < slices; s += way) {
      const c = this.hottestOf(s)
      // far under its ignition charcoal only takes the air up
      if ((this.charKg[s] ?? 0) < 0.08 || c < leak.ignitionC - 40) continue
      const used = (air * 0.75) / (1 + Math.exp((leak.ignitionC - c) / 12)) / (1 + Math.exp((c - this.embersC) / 15))
      air -= used
      this.charKg[s] = (this.charKg[s] ?? 0) - used * 0.087 * stepS
      this.made[s] = used * airHeatJkg
      this.burningW += used * airHeatJkg
    }
  }

  private hottestOf(s: number): number {
    let most = -300
    for (let k = 0; k <= steelAt; k++) most = Math.max(most, this.c[s * nodes + k] ?? 0)
    return most
  }

  hottestC(): number {
    let most = -300
    for (let s = 0; s < slices; s++) most = Math.max(most, this.hottestOf(s))
    return most
  }

  steelC(place: number): number {
    return this.between(place, steelAt)
  }
  earthC(place: number, layer: number): number {
    return this.between(place, earthAt + layer)
  }
  coreC(place: number): number {
    return this.between(place, 0)
  }
  private between(place: number, k: number): number {
    const x = Math.min(Math.max(place * slices - 0.5, 0), slices - 1.001)
    const s = Math.floor(x)
    return (this.c[s * nodes + k] ?? 0) * (1 - x + s) + (this.c[(s + 1) * nodes + k] ?? 0) * (x - s)
  }

  /** One implicit step of a slice: a tree with three arms at the steel, eliminated from its tips. `led`: the rings are given. */
  private solve(s: number, night: Night, hour: number, led: boolean): void {
    const { c, heat, give, d, r } = this
    const o = s * nodes
    const airC = night.airC(hour)
    for (let k = 0; k < nodes; k++) {
      d[k] = (heat[o + k] ?? 1) / stepS
      r[k] = (d[k] ?? 1) * (c[o + k] ?? 0)
    }
    const earthEnd = earthAt + soil - 1
    const outside = 1 / (1 / (this.outerWK * night.givesFactor(hour)) + 1 / this.deep[0])
    this.add(earthEnd, outside, airC + night.sunOnCoverK(hour))
    this.add(nodes - 1, this.deep[1], night.deepC)
    if (s === 0 || s === slices - 1) this.add(steelAt, this.endsWK, airC)
    if (!led) this.r[0] = (r[0] ?? 0) + (this.made[s] ?? 0)
    for (let k = earthEnd; k > earthAt; k--) this.fold(k, k - 1, give[k] ?? 0)
    this.fold(earthAt, steelAt, give[earthAt] ?? 0)
    for (let k = nodes - 1; k > groundAt; k--) this.fold(k, k - 1, give[k] ?? 0)
    this.fold(groundAt, steelAt, give[groundAt] ?? 0)
    if (led) {
      this.add(steelAt, give[rings - 1] ?? 0, c[o + rings - 1] ?? 0)
    } else {
      for (let k = 0; k < rings; k++) this.fold(k, k + 1, give[k] ?? 0)
    }
    c[o + steelAt] = (r[steelAt] ?? 0) / (d[steelAt] ?? 1)
    if (!led) for (let k = rings - 1; k >= 0; k--) this.unfold(o, k, k + 1, give[k] ?? 0)
    this.unfold(o, earthAt, steelAt, give[earthAt] ?? 0)
    for (let k = earthAt + 1; k <= earthEnd; k++) this.unfold(o, k, k - 1, give[k] ?? 0)
    this.unfold(o, groundAt, steelAt, give[groundAt] ?? 0)
    for (let k = groundAt + 1; k < nodes; k++) this.unfold(o, k, k - 1, give[k] ?? 0)
  }

  /** A way to a given temperature. */
  private add(k: number, wK: number, toC: number): void {
    this.d[k] = (this.d[k] ?? 0) + wK
    this.r[k] = (this.r[k] ?? 0) + wK * toC
  }
  /** Takes node `k` out of the equations of its neighbour. Its own row stays for {@link unfold}. */
  private fold(k: number, into: number, wK: number): void {
    const own = (this.d[k] ?? 0) + wK
    this.d[k] = own
    this.d[into] = (this.d[into] ?? 0) + wK - (wK * wK) / own
    this.r[into] = (this.r[into] ?? 0) + (wK * (this.r[k] ?? 0)) / own
  }
  private unfold(o: number, k: number, from: number, wK: number): void {
    this.c[o + k] = ((this.r[k] ?? 0) + wK * (this.c[o + from] ?? 0)) / (this.d[k] ?? 1)
  }
}
