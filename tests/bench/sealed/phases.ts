import { Chance } from '../../../server/simulator/chance.ts'
import { families, type Family } from '../../../server/simulator/firing/plan.ts'
import { bedCourse, burnUntilSealed, type Sealed } from './bed-course.ts'
import type { Course } from './course.ts'
import { drumCourse } from './drum-course.ts'
import type { Which } from './leak.ts'
import { readings, type Core, type Readings } from './probes.ts'

export interface Phase {
  name: string
  course: Course
  readings: Readings
}

/** Of every ten phases eight are drums of the third hand, one is of each family; ten nights go on from one whole firing. */
const nightsOfOne = 10
const before = new Map<Family, { name: string; sealed: Sealed }>()

/** Phase `n` of the study; the same number gives the same phase. */
export function phase(n: number, which: Which = 'any', core: Core = 'some'): Phase {
  const kind = n % 10
  const family = families[kind - 8]
  const name = `${family ?? 'drum'}-${n}`
  const chance = new Chance(`sealed/${name}`)
  const { course, night } =
    family === undefined ? drumCourse(chance, which) : bedCourse(sealedOf(family, Math.floor(n / 10 / nightsOfOne)), chance, which)
  return { name, course, readings: readings(course, chance.branch('probes'), (minute) => night.sunOnCoverK(minute / 60), core) }
}

function sealedOf(family: Family, firing: number): Sealed {
  const name = `sealed/${family}/${firing}`
  const kept = before.get(family)
  if (kept?.name === name) return kept.sealed
  const sealed = burnUntilSealed(name, family)
  before.set(family, { name, sealed })
  return sealed
}
