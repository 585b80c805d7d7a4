import { Chance } from '../chance.ts'
import type { Course } from './course.ts'
import { runCourse } from './course.ts'
import type { Look } from './looks.ts'
import { looksOf } from './looks.ts'
import type { Family, Kind, WorldPlan } from './plan.ts'
import { planWorld } from './plan.ts'
import type { Sampled } from './sampled.ts'
import { sample } from './sampled.ts'
import type { Truth } from './truth.ts'
import { tellTruth } from './truth.ts'

export interface Firing {
  plan: WorldPlan
  course: Course
  truth: Truth
  sampled: Sampled
  looks: Look[]
}

/** One whole firing of one random kiln: what happened, what was true, what the probes said, what a person wrote down. */
export function makeFiring(seed: string, wish: { family?: Family; kind?: Kind; untilSealed?: boolean } = {}): Firing {
  const plan = planWorld(new Chance(seed), seed, wish)
  return burn(plan, wish.untilSealed)
}

export function burn(plan: WorldPlan, untilSealed = false): Firing {
  const course = runCourse(plan, untilSealed)
  return { plan, course, truth: tellTruth(course), sampled: sample(plan, course), looks: looksOf(plan, course) }
}
