import { Chance } from '../chance.ts'
import type { Bed } from '../kiln/bed.ts'
import { Fire } from '../kiln/fire.ts'
import { PieceBed } from '../kiln/pieces.ts'
import { Pipe, cooledC } from '../kiln/pipe.ts'
import type { Stream } from '../kiln/steam.ts'
import { humidity } from '../kiln/steam.ts'
import { ZoneBed } from '../kiln/zones.ts'
import { OpenAir } from './air.ts'
import type { Deed } from './hands.ts'
import { Hands } from './hands.ts'
import type { WorldPlan } from './plan.ts'

export const gridS = 10
const stepS = 5
const longestH = 40
/** Charring is done when this much of the charge, and of its last part, has broken down (common practice has no figure: smoke turns clear). */
const doneMean = 0.975
const doneLeast = 0.88

/** What really happened, on a grid of ten seconds from the lighting. Temperatures °C, drip kg/s. */
export interface Course {
  mouth: number[]
  wall: number[]
  skin: number[]
  smoke: number[]
  outlet: number[]
  air: number[]
  core: number[]
  hottest: number[]
  dripWater: number[]
  dripAcid: number[]
  dripTar: number[]
  cloth: number[]
  charred: number[]
  deeds: Deed[]
  sealDueS: number | null
  sealedS: number
  leakFromS: number | null
  charcoalKg: number
  dryWoodKg: number
  bed: Bed
}

/** Draught through a mouth without fuel, against the open one. */
const narrowed = { half: 0.4, hole: 0.34 }

/** What passes a sealed kiln: a breath, or what a leak lets in. */
export const sealedFlow = (kgS: number, airC: number): Stream => ({ dry: kgS, vapour: kgS * 0.008, acid: 0, tar: 0, air: kgS, tempC: airC })

/** Runs one firing from the lighting until it is cold, at most forty hours; for who learns of the burning only, until it is sealed. */
export function runCourse(plan: WorldPlan, untilSealed = false): Course {
  const chance = new Chance(plan.seed).branch('course')
  const air = new OpenAir(plan.air, chance.branch('wind'))
  const hands = new Hands(plan.hands, chance.branch('hands'))
  const fire = new Fire(plan.fire, air.tempC(0))
  const pipe = new Pipe(plan.pipe, air.tempC(0))
  const bed: Bed = plan.family === 'zones' ? new ZoneBed(plan.bed) : new PieceBed(plan.bed, plan.scheme)
  const c: Course = {
    mouth: [], wall: [], skin: [], smoke: [], outlet: [], air: [], core: [], hottest: [],
    dripWater: [], dripAcid: [], dripTar: [], cloth: [], charred: [],
    deeds: hands.deeds, sealDueS: null, sealedS: Infinity, leakFromS: null,
    charcoalKg: 0, dryWoodKg: plan.bed.charge.dryKg, bed,
  } // prettier-ignore
  let smokeC = air.tempC(0)
  let outletC = smokeC
  for (let tS = 0; tS < longestH * 3600; tS += gridS) {
    const hour = tS / 3600
    const airC = air.tempC(hour)
    const rain = air.rains(hour)
    const weather = { airC, wetting: rain ? 2 : 1 }
    const open = tS < c.sealedS
    let drip = { waterKgS: 0, acidKgS: 0, tarKgS: 0 }
    if (open) {
      const done = bed.charred()
      if (hands.step(tS, airC, fire, pipe, done.mean >= doneMean && done.least >= doneLeast, done.mean)) {
        c.sealedS = tS
        c.sealDueS = hands.sealDueS
        c.charcoalKg = bed.solids().charKg
        if (plan.hands.leakFromSealH !== null) c.leakFromS = tS + plan.hands.leakFromSealH * 3600
      }
    }
    if (untilSealed && tS >= c.sealedS) break
    if (tS < c.sealedS) {
      // a warm chimney and a living fire pull; a cold kiln hardly breathes
      const warm = Math.min(1.15, 0.7 + (smokeC - airC) / 180)
      const alive = 0.45 + 0.55 * Math.min(1, Math.max(0, (fire.mouthC - airC) / 350))
      let gas: Stream = sealedFlow(1e-6, airC)
      for (let s = 0; s < gridS; s += stepS) {
        gas = fire.step(
          stepS,
          airC,
          warm * (hands.mouth === 'open' ? alive : narrowed[hands.mouth]) * air.blow(stepS),
          hands.mouth !== 'open',
        )
        bed.step(stepS, gas, fire.mouthC, weather)
      }
      smokeC = cooledC(gas, plan.pipe.riserKWK, airC)
      gas.vapour = Math.min(gas.vapour, gas.dry * humidity(smokeC, 1))
      gas.tempC = smokeC
      drip = pipe.step(gridS, gas, airC, rain)
      outletC = pipe.outletC
    } else {
      const leaks = c.leakFromS !== null && tS >= c.leakFromS
      bed.step(gridS, sealedFlow(leaks ? plan.hands.leakKgS : 1e-6, airC), airC, weather)
      fire.mouthC += ((airC + 0.12 * (bed.wallC(0) - airC) - fire.mouthC) * gridS) / 5200
      smokeC += ((airC - smokeC) * gridS) / 240
      outletC += ((airC - outletC) * gridS) / 300
    }
    c.mouth.push(fire.mouthC)
    c.wall.push(bed.wallC(plan.probes.wallPlace))
    c.skin.push(bed.skinC(plan.probes.wallPlace))
    c.smoke.push(smokeC)
    c.outlet.push(outletC)
    c.air.push(airC)
    c.core.push(bed.coreC())
    c.hottest.push(bed.hottestC())
    c.dripWater.push(drip.waterKgS)
    c.dripAcid.push(drip.acidKgS)
    c.dripTar.push(drip.tarKgS)
    c.cloth.push(pipe.wetness)
    c.charred.push(bed.charred().mean)
    if (tS > c.sealedS + 8 * 3600 && bed.hottestC() < plan.coldC) break
  }
  return c
}
