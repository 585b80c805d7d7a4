import { Chance } from '../../../server/simulator/chance.ts'
import { families } from '../../../server/simulator/firing/plan.ts'
import { bedCourse, burnUntilSealed, type Sealed } from './bed-course.ts'
import { drumCourse } from './drum-course.ts'
import type { Which } from './leak.ts'
import type { Phase } from './phases.ts'
import { readings } from './probes.ts'

/** Of three kilns one is a drum of the third hand and one is of each family: they weigh alike. */
export const kinWorlds = ['drum', ...families] as const

let burnt: { name: string; sealed: Sealed } | null = null

/**
 * Night `day` of kiln `kiln`: the kiln and its probes are the same every day; charge, fire, the earth as it was heaped, and the weather are not.
 * `other` gives the same day another night, with another leak.
 */
export function nightOf(kiln: number, day: number, which: Which, other = 0): Phase {
  const world = kinWorlds[kiln % kinWorlds.length] ?? 'drum'
  const name = `sealed/${world}-kiln-${kiln}`
  const own = new Chance(name)
  const today = `${name}/day-${day}`
  const chance = new Chance(`${today}/${other}`)
  if (world !== 'drum' && burnt?.name !== today) burnt = { name: today, sealed: burnUntilSealed(today, world, name) }
  const { course, night } =
    world === 'drum' || burnt === null ? drumCourse(chance, which, own) : bedCourse(burnt.sealed, chance, which, own)
  const sunAt = (minute: number): number => night.sunOnCoverK(minute / 60)
  return { name: `${name}-${day}`, course, readings: readings(course, chance.branch('probes'), sunAt, 'some', own.branch('probes')) }
}
