import type { Chance } from '../../../server/simulator/chance.ts'

/** The open air of one night and the day after it, as it really is. */
export class Night {
  private readonly meanC: number
  private readonly swingK: number
  private readonly driftKPerH: number
  private readonly sealedHour: number
  private readonly rainFromH: number
  private readonly rainToH: number
  private readonly windy: number
  private readonly sunK: number

  /** `as` gives what a day before has settled already. */
  constructor(chance: Chance, as: { meanC?: number; sealedHour?: number } = {}) {
    this.meanC = as.meanC ?? chance.between(5, 29)
    this.swingK = chance.between(1, 7)
    // a change of the weather while the kiln cools
    this.driftKPerH = chance.often(0.3) ? chance.between(-0.35, 0.35) : 0
    this.sealedHour = as.sealedHour ?? chance.between(11, 23)
    const rains = chance.often(0.25)
    this.rainFromH = rains ? chance.between(0, 30) : Infinity
    this.rainToH = this.rainFromH + chance.between(0.3, 6)
    this.windy = chance.between(0, 0.8)
    this.sunK = chance.between(0, 8)
  }

  /** Hour of the day, `hour` counted from the seal. */
  private dayHour(hour: number): number {
    return (((this.sealedHour + hour) % 24) + 24) % 24
  }

  rains(hour: number): boolean {
    return hour >= this.rainFromH && hour < this.rainToH
  }

  airC(hour: number): number {
    const day = Math.cos((2 * Math.PI * (this.dayHour(hour) - 14.5)) / 24)
    return this.meanC + this.swingK * day + this.driftKPerH * Math.max(0, hour) - (this.rains(hour) ? 2 : 0)
  }

  /** How much warmer the cover is than the air, in the sun, K. */
  sunOnCoverK(hour: number): number {
    const height = Math.sin((Math.PI * (this.dayHour(hour) - 6.5)) / 12)
    return this.rains(hour) ? 0 : this.sunK * Math.max(0, height)
  }

  /** Heat that the surface gives, against still and dry. */
  givesFactor(hour: number): number {
    const gust = 1 + this.windy * (0.5 + 0.5 * Math.sin(2.1 * hour + 3 * Math.sin(0.37 * hour)))
    return this.rains(hour) ? 2 * gust : gust
  }

  /** Ground half a metre down. */
  get deepC(): number {
    return this.meanC
  }
}
