import type { Stream } from './steam.ts'

export interface FirePlan {
  /** What the person aims at, °C in the mouth. */
  targetC: number
  /** Dry gas through the drum when all is open and warm, kg/s. */
  draughtKgS: number
  /** Fuel burns down with this time, s. */
  burnDownS: number
  /** The mouth warms and cools with this time, s. */
  inertiaS: number
  /** kJ per kg of fuel that reach the gas (air-dry wood, after loss to the open: from memory). */
  fuelKJkg: number
  /** Share of the gas that is air still able to burn something. */
  airShare: number
}

/** The small fire at the mouth. */
export class Fire {
  fuelKg = 0
  private pull = 0.6
  mouthC: number

  private readonly plan: FirePlan

  constructor(plan: FirePlan, airC: number) {
    this.plan = plan
    this.mouthC = airC
  }

  feed(kg: number): void {
    this.fuelKg += kg
  }

  /** kg/s that holds the target at the draught of the moment. */
  wantedKgS(airC: number): number {
    return (this.plan.draughtKgS * this.pull * 1.1 * (this.plan.targetC - airC)) / this.plan.fuelKJkg
  }

  burnDownS(): number {
    return this.plan.burnDownS
  }

  tooColdK(): number {
    return this.plan.targetC - this.mouthC
  }

  /** `pull` is the draught against the plan's (0..1.3); `left` when nobody feeds any more and air comes through. Gives the gas that enters the drum. */
  step(dtS: number, airC: number, pull: number, left = false): Stream {
    const { plan } = this
    this.pull = pull
    const rate = (this.fuelKg / plan.burnDownS) * (0.4 + 0.6 * Math.min(1.2, pull))
    this.fuelKg = Math.max(0, this.fuelKg - rate * dtS)
    const dry = Math.max(1e-7, plan.draughtKgS * pull)
    const flameC = airC + Math.min(1000, (rate * plan.fuelKJkg) / (dry * 1.1))
    this.mouthC += ((flameC - this.mouthC) * dtS) / (flameC > this.mouthC ? plan.inertiaS : plan.inertiaS * 1.6)
    const fuelled = Math.min(1, Math.max(0, (this.mouthC - 250) / 200))
    return {
      dry,
      // air brings about 0.008, a kilogram of air-dry fuel about 0.65 (hydrogen and its own water: from memory)
      vapour: dry * 0.008 + rate * 0.65,
      acid: 0,
      tar: 0,
      air: left ? dry * (1 - 0.9 * fuelled) : dry * plan.airShare * (1 + 2 * (1 - fuelled)),
      tempC: this.mouthC,
    }
  }
}
