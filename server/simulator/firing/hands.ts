import type { Opening } from '../../contract/vocabulary.ts'
import type { Chance } from '../chance.ts'
import type { Fire } from '../kiln/fire.ts'
import type { Pipe } from '../kiln/pipe.ts'
import type { HandsPlan } from './plan.ts'

export interface Deed {
  /** Seconds after lighting. */
  atS: number
  deed: 'light' | 'refuel' | 'wet-condenser' | 'seal' | 'stop-feeding' | 'air'
  mouth?: Opening
}

/** The person beside the kiln: feeds, wets, forgets, seals. */
export class Hands {
  readonly deeds: Deed[] = [{ atS: 0, deed: 'light' }]
  private nextFeedS = 0
  private nextWetS: number
  /** How far the mouth stands open. */
  mouth: 'open' | 'half' | 'hole' = 'open'
  private charredAtS: number | null = null
  private readonly sealDelayS: number
  private readonly plan: HandsPlan
  private readonly chance: Chance

  constructor(plan: HandsPlan, chance: Chance) {
    this.plan = plan
    this.chance = chance
    this.nextWetS = plan.wetFromH * 3600
    this.sealDelayS = plan.sealAfterDueMin * 60
  }

  private away(span: [number, number] | null, hour: number): boolean {
    return span !== null && hour >= span[0] && hour < span[1]
  }

  /** Feeds and wets when it is time; true when the person seals now. `broken` is the share of the charge that has broken down. */
  step(tS: number, airC: number, fire: Fire, pipe: Pipe, charredNow: boolean, broken: number): boolean {
    const hour = tS / 3600
    this.narrow(tS, broken)
    if (tS >= this.nextFeedS && this.mouth === 'open' && !this.away(this.plan.neglectFire, hour)) this.feed(tS, airC, fire)
    if (tS >= this.nextWetS && !this.away(this.plan.neglectCloths, hour)) {
      pipe.wet()
      this.deeds.push({ atS: tS, deed: 'wet-condenser' })
      this.nextWetS = tS + 60 * Math.max(3, this.plan.wetEveryMin * (1 + 0.3 * this.chance.normal()))
    }
    if (charredNow) this.charredAtS ??= tS
    const done = this.charredAtS !== null && tS >= this.charredAtS + this.sealDelayS
    if (!done && hour < this.plan.sealAtLatestH) return false
    this.deeds.push({ atS: tS, deed: 'seal' })
    return true
  }

  get sealDueS(): number | null {
    return this.charredAtS
  }

  /** Where the charge is let run: no more fuel, and the air step by step (trade facts 1.2.3, 2.15-2.17). */
  private narrow(tS: number, broken: number): void {
    const from = this.plan.letRunFromShare
    if (from === null) return
    const wanted = broken < from ? 'open' : broken < 0.45 ? 'half' : broken < 0.9 ? 'hole' : 'half'
    if (wanted === this.mouth) return
    if (this.mouth === 'open') this.deeds.push({ atS: tS, deed: 'stop-feeding' })
    this.deeds.push({ atS: tS, deed: 'air', mouth: wanted })
    this.mouth = wanted
  }

  private feed(tS: number, airC: number, fire: Fire): void {
    const everyS = 60 * Math.max(4, this.plan.feedEveryMin * (1 + 0.25 * this.chance.normal()))
    // enough for the pause to come, by feel; a mouth that has gone cool gets kindling on top
    const short = Math.max(0.5, Math.min(1.4, 1 + fire.tooColdK() / 300))
    const wanted = fire.wantedKgS(airC) * everyS * short
    const kindling = tS === 0 ? 0.6 * fire.wantedKgS(airC) * fire.burnDownS() : 0
    fire.feed(kindling + wanted * Math.max(0.3, 1 + 0.2 * this.chance.normal()))
    this.deeds.push({ atS: tS, deed: 'refuel' })
    this.nextFeedS = tS + everyS
  }
}
