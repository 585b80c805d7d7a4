import { Chance } from '../../../server/simulator/chance.ts'
import { runCourse, sealedFlow, type Course as WholeCourse } from '../../../server/simulator/firing/course.ts'
import { planWorld, type Family, type WorldPlan } from '../../../server/simulator/firing/plan.ts'
import { copyOf } from '../../../server/simulator/kiln/copy.ts'
import { emptyCourse, isOver, leadMin, type Course } from './course.ts'
import { drawLeak, farFrom, type Which } from './leak.ts'
import { Night } from './night.ts'

// Nights of the two families of server/simulator: a whole firing is run until it is sealed, at its own time, far too early or late,
// and several nights go on from there, each with its own weather, leak and probes.

const stepS = 20

export interface Sealed {
  plan: WorldPlan
  whole: WholeCourse
}

/** `kiln` is the seed of a kiln that has other days too. */
export function burnUntilSealed(seed: string, family: Family, kiln: string | null = null): Sealed {
  const chance = new Chance(seed)
  const day = planWorld(chance, seed, { family })
  const plan = kiln === null ? day : sameBed(planWorld(new Chance(kiln), kiln, { family }), day, chance.branch('heaped'))
  const hands = chance.branch('sealing')
  // one in three is sealed by the clock, raw or burnt out
  if (hands.often(0.35)) plan.hands.sealAtLatestH = hands.between(4.5, 13)
  else if (hands.often(0.2)) plan.hands.sealAfterDueMin = hands.between(30, 150)
  return { plan, whole: runCourse(plan, true) }
}

/**
 * The same kiln on another day: its ways of heat and its probes stay, filled about as before; charge, fire, hands and air are those of the day, and
 * the earth is heaped anew, wetter or drier. The spreads are own judgement, no source.
 */
function sameBed(kiln: WorldPlan, day: WorldPlan, chance: Chance): WorldPlan {
  const about = (value: number, spread: number): number => value * Math.exp(spread * chance.normal())
  const wet = Math.exp(0.12 * chance.normal())
  const { layersM, earthWmK, earthKJm3K } = kiln.bed.cover
  const bed = {
    ...kiln.bed,
    charge: { ...day.bed.charge, dryKg: about(kiln.bed.charge.dryKg, 0.12) },
    cover: { layersM: layersM.map((m) => about(m, 0.1)), earthWmK: earthWmK * wet, earthKJm3K: earthKJm3K * Math.sqrt(wet) },
    earthStartC: day.bed.earthStartC,
    gasToWoodKWK: day.bed.gasToWoodKWK,
    woodToWallWm2K: about(kiln.bed.woodToWallWm2K, 0.12),
    alongKWK: about(kiln.bed.alongKWK, 0.15),
    embersC: day.bed.embersC,
  }
  return { ...day, bed, probes: kiln.probes }
}

export function bedCourse(
  { plan, whole }: Sealed,
  chance: Chance,
  which: Which = 'any',
  kiln: Chance | null = null,
): { course: Course; night: Night } {
  const sealedH = whole.sealedS / 3600
  const night = new Night(chance.branch('night'), { meanC: plan.air.meanC, sealedHour: 6 + sealedH })
  const leak = drawLeak(chance.branch('leak'), which)
  const bed = copyOf(whole.bed)
  const probe = (kiln ?? chance).branch('place')
  const drawn = probe.between(0.1, 0.85)
  const place = which === 'hidden' && leak !== null ? farFrom(leak, drawn) : drawn
  const contact = plan.probes.wallContact
  const mouthH = probe.between(0.8, 2.4)
  const mouthShare = probe.often(0.5) ? 0 : probe.between(0, 0.2)
  const course = emptyCourse(plan.family, leak, sealedH, plan.bed.charge.dryKg)
  const rows = whole.mouth.length
  // the places of the whole firing's own probe: the night's wall before the seal is moved so that it joins
  const joins = (bed.wallC(place) - (whole.air.at(-1) ?? 0)) / Math.max(5, (whole.wall.at(-1) ?? 0) - (whole.air.at(-1) ?? 0))
  const skinShare = (bed.skinC(place) - bed.wallC(place)) / Math.max(5, bed.wallC(place))
  for (let minute = -leadMin; minute < 0; minute++) {
    const i = Math.max(0, rows + minute * 6)
    const air = whole.air[i] ?? 20
    const wall = air + joins * ((whole.wall[i] ?? air) - air)
    const skin = wall * (1 + skinShare)
    course.wall.push(skin + contact * (wall - skin))
    course.slipped.push(skin)
    course.firebox.push(whole.mouth[i] ?? air)
    course.smoke.push(whole.smoke[i] ?? air)
    course.outlet.push(whole.outlet[i] ?? air)
    course.air.push(air)
    course.core.push(whole.core[i] ?? air)
    course.hottest.push(whole.hottest[i] ?? air)
    course.burningW.push(0)
  }
  let mouth = course.firebox.at(-1) ?? 20
  let smoke = course.smoke.at(-1) ?? 20
  let outlet = course.outlet.at(-1) ?? 20
  for (let minute = 0; !isOver(course); minute++) {
    const hour = minute / 60
    const air = night.airC(hour)
    const leaks = leak !== null && hour >= leak.fromH
    const before = bed.ledger.burntKJ
    const weather = { airC: air + night.sunOnCoverK(hour), wetting: night.givesFactor(hour) }
    for (let s = 0; s < 60; s += stepS) bed.step(stepS, sealedFlow(leaks ? leak.kgS : 1e-6, air), air, weather)
    mouth += (air + mouthShare * (bed.wallC(0) - air) - mouth) / (60 * mouthH)
    smoke += (air - smoke) / 4
    outlet += (air - outlet) / 5
    const skin = bed.skinC(place)
    course.wall.push(skin + contact * (bed.wallC(place) - skin))
    course.slipped.push(skin)
    course.firebox.push(mouth)
    course.smoke.push(smoke)
    course.outlet.push(outlet)
    course.air.push(air)
    course.core.push(bed.coreC())
    course.hottest.push(bed.hottestC())
    course.burningW.push(((bed.ledger.burntKJ - before) * 1000) / 60)
  }
  return { course, night }
}
