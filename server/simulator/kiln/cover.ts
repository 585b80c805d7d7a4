import type { CoverPlan } from './plan.ts'

const steelCp = 0.5 // kJ/(kg K), trade facts 9.2.9
const drumM2 = 2.04 // trade facts 9.2.10
const steelKg = 20 // trade facts 9.2.10

/** Steel and earth beside one slice of the drum: layers from the wall outwards, explicit steps. Temperatures °C, heat kJ. */
export class Cover {
  readonly tempC: Float64Array
  private readonly capacity: Float64Array
  private readonly conductance: Float64Array
  private readonly areaM2: number

  constructor(plan: CoverPlan, slices: number, startC: number, wallStartC: number) {
    this.areaM2 = drumM2 / slices
    const depths = plan.layersM
    this.tempC = new Float64Array(depths.length + 1).fill(startC)
    this.tempC[0] = wallStartC
    this.capacity = Float64Array.from([(steelKg * steelCp) / slices, ...depths.map((depth) => plan.earthKJm3K * depth * this.areaM2)])
    // between the middles of neighbouring layers; the last is to the open air (10 W/m²K, common practice, no source)
    this.conductance = new Float64Array(depths.length + 1)
    for (let i = 0; i < depths.length; i++) {
      const half = depths[i]! / 2 + (i === 0 ? 0 : depths[i - 1]! / 2)
      this.conductance[i] = ((plan.earthWmK / half) * this.areaM2) / 1000
    }
    const last = depths[depths.length - 1]! / 2 / plan.earthWmK
    this.conductance[depths.length] = this.areaM2 / (last + 1 / 10) / 1000
  }

  /** `intoWallKW` from inside, `outerC` the air over the earth, `wetting` multiplies what the surface gives (rain). Returns kW lost. */
  step(dtS: number, intoWallKW: number, outerC: number, wetting: number): number {
    const n = this.tempC.length
    let flow = intoWallKW
    let given = 0
    for (let i = 0; i < n; i++) {
      const next = i + 1 < n ? this.tempC[i + 1]! : outerC
      const out = this.conductance[i]! * (i + 1 < n ? 1 : wetting) * (this.tempC[i]! - next)
      this.tempC[i]! += ((flow - out) * dtS) / this.capacity[i]!
      flow = out
      given = out
    }
    return given
  }

  get wallC(): number {
    return this.tempC[0]!
  }

  get skinC(): number {
    return this.tempC[1]!
  }

  heatKJ(): number {
    let sum = 0
    for (let i = 0; i < this.tempC.length; i++) sum += this.tempC[i]! * this.capacity[i]!
    return sum
  }

  areaOfSliceM2(): number {
    return this.areaM2
  }
}
