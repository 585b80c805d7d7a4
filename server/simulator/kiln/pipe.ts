import type { Stream } from './steam.ts'
import { dryGasCp, humidity, organicCp, steamCp } from './steam.ts'

export interface PipePlan {
  /** Heat through the pipe, kW/K, with wet and with dry cloths. */
  wetKWK: number
  dryKWK: number
  /** Water that the cloths hold, kg. */
  clothKg: number
  /** A wet cloth stands this much under the air, K. */
  wetBulbK: number
  /** Share of the tar mist caught when the gas is cooled well. */
  mistCaught: number
  /** Chimney riser before the pipe, kW/K to the air. */
  riserKWK: number
}

/** Temperature of a gas after `ua` kW/K to `coolC`, with its steam condensing at the dew point; bounded Newton on the heat balance. */
export function cooledC(gas: Stream, ua: number, coolC: number): number {
  if (gas.dry < 1e-6 || gas.tempC <= coolC) return gas.tempC
  const carries = gas.dry * dryGasCp + (gas.acid + gas.tar) * organicCp
  const heatAt = (t: number) => {
    const steam = Math.min(gas.vapour, gas.dry * humidity(t, 1))
    return t * carries + steam * (2501 + steamCp * t) + (gas.vapour - steam) * 4.19 * t
  }
  const enters = heatAt(gas.tempC)
  let low = coolC
  let high = gas.tempC
  let t = (low + high) / 2
  for (let n = 0; n < 14 && high - low > 0.02; n++) {
    if (heatAt(t) + ua * (t - coolC) > enters) high = t
    else low = t
    t = (low + high) / 2
  }
  return t
}

export interface Drip {
  waterKgS: number
  acidKgS: number
  tarKgS: number
}

const pieces = 5

/** The long sloping pipe under its cloths. */
export class Pipe {
  clothKg = 0
  outletC: number

  private readonly plan: PipePlan

  constructor(plan: PipePlan, airC: number) {
    this.plan = plan
    this.outletC = airC
  }

  wet(): void {
    this.clothKg = this.plan.clothKg
  }

  /** Cloths drier than a seventh cool no better than the bare pipe. */
  get wetness(): number {
    return Math.min(1, this.clothKg / (0.3 * this.plan.clothKg))
  }

  /** Takes the smoke at the chimney's mouth; gives what drips out. `rain` wets by itself. */
  step(dtS: number, smoke: Stream, airC: number, rain: boolean): Drip {
    if (rain) this.clothKg = Math.min(this.plan.clothKg, this.clothKg + 4e-4 * dtS)
    const wet = this.wetness
    const ua = this.plan.dryKWK + (this.plan.wetKWK - this.plan.dryKWK) * wet
    const coolC = airC - this.plan.wetBulbK * wet
    const gas = { ...smoke }
    const entersC = gas.tempC
    let cooledKW = 0
    for (let n = 0; n < pieces; n++) {
      const t = cooledC(gas, ua / pieces, coolC)
      cooledKW += (ua / pieces) * Math.max(0, t - coolC)
      gas.vapour = Math.min(gas.vapour, gas.dry * humidity(t, 1))
      gas.tempC = t
    }
    this.outletC = gas.tempC
    // about nine tenths of the heat leaves by evaporating from a wet cloth; sun and wind take a little always
    this.clothKg = Math.max(0, this.clothKg - dtS * wet * ((cooledKW * 0.7) / 2430 + 2e-5))
    const left = smoke.vapour > 0 ? gas.vapour / smoke.vapour : 1
    const water = smoke.vapour - gas.vapour
    return {
      waterKgS: water,
      acidKgS: smoke.acid * (1 - left * Math.sqrt(left)),
      tarKgS: smoke.tar * this.plan.mistCaught * (1 - Math.exp(-(entersC - gas.tempC) / 25)),
    }
  }
}
