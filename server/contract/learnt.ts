import type { Ms } from './fold.ts'

// What a firing teaches of its kiln, and what the next one takes along. Codes and numbers only.

/** A middle and one standard deviation. */
export interface Known {
  mean: number
  sd: number
}

/**
 * One lesson of one firing; each firing teaches a part once, and a part told again replaces the one before.
 * `burn`, at the seal: the ensemble's unknowns that belong to the kiln and not to the charge of the day, by name, in spreads of the wide prior.
 * `stop`: the wall when collecting had to stop, °C, where a smoke probe told that.
 * `hours`: from lighting to the call to stop.
 * `night`, when the trial opening is called: how the wall fell, where nothing spoke of a fire.
 */
export type Lesson =
  | { part: 'burn'; unknowns: Record<string, Known> }
  | { part: 'stop'; wallC: number }
  | { part: 'hours'; toStop: number }
  | ({ part: 'night' } & Fallen)

/** A tight night as it is compared: what was known at its seal, and the wall over what its cover felt at fixed hours (`cooling/falls.ts`), K. */
export interface Fallen {
  conditions: readonly number[]
  /** Null in gaps. */
  warmthK: readonly (number | null)[]
}

/** A lesson with the firing that taught it and when. */
export interface KeptLesson {
  firing: string
  at: Ms
  lesson: Lesson
}

/** What the last firings of a kiln taught, put together; it stands in the kiln's config, so that an export holds it. */
export interface Prior {
  /** How many firings are behind it. */
  firings: number
  /** As in the lesson `burn`. */
  unknowns?: Record<string, Known> | undefined
  /** Wall at which collecting had to stop, °C. */
  stop?: Known | undefined
  /** Logarithm of the hours from lighting to the call to stop. */
  hours?: Known | undefined
  /** Newest first. */
  night?: readonly Fallen[] | undefined
}

/** What was changed about a kiln so that it has to be learnt anew. */
export const kilnChanges = ['drum', 'cover', 'probe'] as const
export type KilnChange = (typeof kilnChanges)[number]
