import type { Leak } from './leak.ts'

export const leadMin = 240

/** One sealed phase as it really was, minute by minute; index 0 is `leadMin` before the seal. Temperatures °C. */
export interface Course {
  world: 'drum' | 'zones' | 'pieces'
  /** Where the wall probe sits, as it touches there; and where it would read if it slipped into the earth. */
  wall: number[]
  slipped: number[]
  firebox: number[]
  smoke: number[]
  outlet: number[]
  air: number[]
  core: number[]
  hottest: number[]
  /** W of charcoal burning in the air that gets in. */
  burningW: number[]
  leak: Leak | null
  litH: number
  /** Dry wood as it was loaded, kg. */
  woodKg: number
}

export const emptyCourse = (world: Course['world'], leak: Leak | null, litH: number, woodKg: number): Course => ({
  world,
  wall: [],
  slipped: [],
  firebox: [],
  smoke: [],
  outlet: [],
  air: [],
  core: [],
  hottest: [],
  burningW: [],
  leak,
  litH,
  woodKg,
})

/** A night is followed for so long after the hottest part has fallen under the limit of opening: late calls shall be seen. */
const limitC = 45
const afterMin = 900
const longestMin = 52 * 60

/** Leave it when the night tells nothing more. */
export function isOver(course: Course): boolean {
  const n = course.hottest.length
  const minutes = n - leadMin
  if (minutes >= longestMin) return true
  return minutes > 600 + afterMin && (course.hottest[n - afterMin] ?? 999) < limitC && (course.hottest[n - 1] ?? 999) < limitC
}

/** Minutes from the seal from which on it is cold to its hottest part and nothing burns: whoever opens it then finds it quiet. Its length where it never is. */
export function coldForGood({ hottest, burningW }: Course): number {
  let from = hottest.length
  while (from > leadMin && (hottest[from - 1] ?? 999) < limitC && (burningW[from - 1] ?? 0) === 0) from--
  return from - leadMin
}
