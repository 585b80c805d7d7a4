import type { Chance } from '../chance.ts'
import type { AirPlan } from './plan.ts'

/** The open air over a day: temperature, rain, gusts on the draught. */
export class OpenAir {
  private gust = 0

  private readonly plan: AirPlan
  private readonly chance: Chance

  constructor(plan: AirPlan, chance: Chance) {
    this.plan = plan
    this.chance = chance
  }

  /** `hour` after lighting, which is at six in the morning. */
  tempC(hour: number): number {
    const { meanC, swingK, warmestHour } = this.plan
    return meanC + swingK * Math.cos((2 * Math.PI * (hour - warmestHour)) / 24) - (this.rains(hour) ? 2 : 0)
  }

  rains(hour: number): boolean {
    const { rain } = this.plan
    return rain !== null && hour >= rain[0] && hour < rain[1]
  }

  /** A factor on the draught with a memory of about three minutes. */
  blow(dtS: number): number {
    const keep = Math.exp(-dtS / 180)
    this.gust = this.gust * keep + this.plan.gusts * Math.sqrt(1 - keep * keep) * this.chance.normal()
    return Math.max(0.5, 1 + this.gust)
  }
}
