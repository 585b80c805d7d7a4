import type { Weathering } from './bed.ts'
import { Cover } from './cover.ts'
import type { BedPlan } from './plan.ts'
import type { Stream } from './steam.ts'
import { capacityFlow } from './steam.ts'

/** Steel and earth along the whole drum, one cover beside every slice. */
export class CoverRow {
  private readonly plan: BedPlan
  private readonly covers: Cover[]

  constructor(plan: BedPlan, slices: number) {
    this.plan = plan
    this.covers = Array.from({ length: slices }, () => new Cover(plan.cover, slices, plan.earthStartC, plan.charge.startC))
  }

  /** What a slice of wood and the gas beside it give to the wall; the gas is cooled by it. kJ from the wood, kJ lost to the open. */
  take(i: number, dtS: number, gas: Stream, woodC: number, weather: Weathering): { fromWoodKJ: number; lostKJ: number } {
    const cover = this.covers[i]!
    const area = cover.areaOfSliceM2()
    const fromWood = (this.plan.woodToWallWm2K / 1000) * area * (woodC - cover.wallC)
    const flow = capacityFlow(gas)
    const fromGas = flow > 1e-9 ? flow * (1 - Math.exp(((-this.plan.gasToWallWm2K / 1000) * area) / flow)) * (gas.tempC - cover.wallC) : 0
    if (flow > 1e-9) gas.tempC -= fromGas / flow
    return { fromWoodKJ: fromWood * dtS, lostKJ: cover.step(dtS, fromWood + fromGas, weather.airC, weather.wetting) * dtS }
  }

  /** `place` from 0 at the mouth to 1 at the chimney. */
  wallC(place: number): number {
    return this.between(place, (cover) => cover.wallC)
  }

  skinC(place: number): number {
    return this.between(place, (cover) => cover.skinC)
  }

  private between(place: number, of: (cover: Cover) => number): number {
    const n = this.covers.length
    const x = Math.max(0, Math.min(n - 1.001, place * n - 0.5))
    const i = Math.floor(x)
    return of(this.covers[i]!) * (1 - x + i) + of(this.covers[i + 1]!) * (x - i)
  }

  hottestC(): number {
    return this.covers.reduce((most, cover) => Math.max(most, cover.wallC), -300)
  }

  heatKJ(): number {
    return this.covers.reduce((sum, cover) => sum + cover.heatKJ(), 0)
  }
}
