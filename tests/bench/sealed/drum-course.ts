import type { Chance } from '../../../server/simulator/chance.ts'
import { emptyCourse, isOver, leadMin, type Course } from './course.ts'
import { Drum } from './drum.ts'
import { drawDrum, sameDrum } from './drum-plan.ts'
import { drawLeak, farFrom, type Which } from './leak.ts'
import { Night } from './night.ts'

/** One sealed phase of a drum of the third hand; `kiln` is the chance of a drum that has other days too, with its probes where they are. */
export function drumCourse(chance: Chance, which: Which = 'any', kiln: Chance | null = null): { course: Course; night: Night } {
  const night = new Night(chance.branch('night'))
  const own = drawDrum((kiln ?? chance).branch('drum'))
  const drum = new Drum(kiln === null ? own : sameDrum(own, chance.branch('drum')), night)
  const leak = drawLeak(chance.branch('leak'), which)
  const probe = (kiln ?? chance).branch('place')
  const drawn = probe.between(0.12, 0.88)
  const place = which === 'hidden' && leak !== null ? farFrom(leak, drawn) : drawn
  const contact = probe.between(0.4, 1)
  const fireC = probe.between(480, 760)
  const mouthH = probe.between(0.8, 2.4)
  const mouthShare = probe.often(0.5) ? 0 : probe.between(0, 0.3)
  const chimneyShare = probe.between(0, 0.04)
  const course = emptyCourse('drum', leak, drum.litH, drum.woodKg)
  const at = (xs: Float32Array, x: number): number => {
    const p = Math.min(Math.max(x * xs.length - 0.5, 0), xs.length - 1.001)
    const i = Math.floor(p)
    return (xs[i] ?? 0) * (1 - p + i) + (xs[i + 1] ?? 0) * (p - i)
  }
  for (const { hour, steel, earth } of drum.litMinutes.slice(-leadMin)) {
    const air = night.airC(hour)
    const wall = contact * at(steel, place) + (1 - contact) * at(earth, place)
    put(course, {
      wall,
      slipped: at(earth, place),
      air,
      firebox: fireC + 25 * Math.sin(hour * 24),
      smoke: 120 + 0.4 * at(steel, 0.95),
      outlet: air + 14,
    })
  }
  let mouth = fireC
  let smoke = course.smoke.at(-1) ?? 20
  let outlet = course.outlet.at(-1) ?? 20
  for (let minute = 0; !isOver(course); minute++) {
    const hour = minute / 60
    const air = night.airC(hour)
    drum.step(night, leak, hour)
    const through = leak !== null && hour >= leak.fromH ? leak.kgS * 20 : 0
    mouth += (air + mouthShare * (drum.coreC(0) - air) - mouth) / (60 * mouthH)
    smoke += (air + (chimneyShare + through) * (drum.coreC(1) - air) - smoke) / 5
    outlet += (air - outlet) / 6
    const wall = contact * drum.steelC(place) + (1 - contact) * drum.earthC(place, 0)
    put(course, {
      wall,
      slipped: drum.earthC(place, 1),
      air,
      firebox: mouth,
      smoke,
      outlet,
      core: drum.coreC(0.5),
      hottest: drum.hottestC(),
      burningW: drum.burningW,
    })
  }
  return { course, night }
}

type Row = {
  wall: number
  slipped: number
  air: number
  firebox: number
  smoke: number
  outlet: number
  core?: number
  hottest?: number
  burningW?: number
}

function put(course: Course, row: Row): void {
  course.wall.push(row.wall)
  course.slipped.push(row.slipped)
  course.air.push(row.air)
  course.firebox.push(row.firebox)
  course.smoke.push(row.smoke)
  course.outlet.push(row.outlet)
  course.core.push(row.core ?? 500)
  course.hottest.push(row.hottest ?? 500)
  course.burningW.push(row.burningW ?? 0)
}
