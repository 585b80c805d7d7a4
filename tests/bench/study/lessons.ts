import type { Charge } from '../../../server/contract/fold.ts'
import { emptyMemory, light, type Minute, rememberMinute } from '../../../server/domain/estimate/learned/memory.ts'
import { signCount, signsOf } from '../../../server/domain/estimate/learned/signs.ts'
import type { Chance } from '../../../server/simulator/chance.ts'

/** One simulated firing, minute by minute, whoever simulated it; index 0 is `leadMinutes` before lighting. */
export interface Simulated {
  leadMinutes: number
  fireboxC: number[]
  wallC: number[]
  outletC: number[]
  /** The true smoke; whether a probe is fitted is chance of the lesson. */
  smokeC: number[]
  fed: boolean[]
  wetted: boolean[]
  seen: { minute: number; drip: number; smoke: number }[]
  charge: Charge | null
  /** kg of good, watery, tar-laden condensate in each minute from lighting on. */
  truth: readonly (readonly [number, number, number])[]
  best: { fromMinute: number; toMinute: number; value: number } | null
  /** When charring was done, minutes after lighting; null when it never was. */
  sealMinute: number | null
}

/** Rows for the learner: signs, the classes of the next quarter of an hour as shares, and how much the row counts. */
export interface Lessons {
  signs: Float32Array[]
  shares: Float32Array[]
  weights: number[]
  /** Hours until collecting is best begun and best ended and until charring is done (negative once past, NaN where it never comes), then until the kiln is sealed all the same. */
  until: Float32Array[]
  /** Weight of the firing that a row is from. */
  firing: number[]
}

export interface Wish {
  smoke: boolean
  seen: boolean
  acts: boolean
  charge: boolean
}

/** Chance of a lesson: most kilns have three probes, some people write down what they see, most weigh the charge. */
export function drawWish(chance: Chance): Wish {
  return { smoke: chance.often(0.45), seen: chance.often(0.7), acts: chance.often(0.8), charge: chance.often(0.9) }
}

const looksAheadMinutes = 15

/** Plays one firing to the memory of the judge and keeps every fifth minute. `weight` is the weight of the firing. */
export function teach(firing: Simulated, wish: Wish, weight: number, chance: Chance, lessons: Lessons): void {
  const memory = emptyMemory(wish.charge && firing.charge ? firing.charge : {})
  const value = Math.max(firing.best?.value ?? 0, 3)
  const phase = chance.whole(0, 4)
  firing.fireboxC.forEach((fireboxC, i) => {
    if (i === firing.leadMinutes) light(memory)
    const seen = wish.seen ? firing.seen.find((one) => one.minute === i) : undefined
    const heard: Minute = {
      fireboxC,
      wallC: firing.wallC[i] ?? null,
      outletC: firing.outletC[i] ?? null,
      smokeC: wish.smoke ? Math.round(((firing.smokeC[i] ?? 0) + 0.6 * chance.normal()) * 4) / 4 : null,
      fed: wish.acts && (firing.fed[i] ?? false),
      wetted: wish.acts && (firing.wetted[i] ?? false),
      drip: seen?.drip ?? 0,
      smoke: seen?.smoke ?? 0,
    }
    rememberMinute(memory, heard)
    const since = i - firing.leadMinutes
    if (since < 10 || since % 5 !== phase) return
    const next = [0, 0, 0]
    for (let k = 0; k < looksAheadMinutes; k += 3) {
      const minute = firing.truth[Math.min(since + k, firing.truth.length - 1)]
      minute?.forEach((kg, c) => (next[c] = (next[c] ?? 0) + kg / 5))
    }
    const flow = next.reduce((a, b) => a + b, 0)
    lessons.signs.push(Float32Array.from(signsOf(memory)))
    lessons.shares.push(Float32Array.from(next, (kg) => kg / (flow + 1e-9)))
    // where nothing flows nothing can be won or lost, so the row hardly counts
    const hoursTo = (minute: number | null | undefined): number => (minute === null || minute === undefined ? NaN : (minute - since) / 60)
    const sealed = firing.fireboxC.length - firing.leadMinutes
    lessons.firing.push(weight)
    lessons.until.push(Float32Array.of(...[firing.best?.fromMinute, firing.best?.toMinute, firing.sealMinute, sealed].map(hoursTo)))
    lessons.weights.push(weight * Math.min(Math.max((100 * flow) / value, 0.05), 1.5))
  })
  if (lessons.signs.length > 0 && lessons.signs[0]?.length !== signCount) throw new Error('signCount is not the number of signs')
}

/** Firings of every length count alike between two and thirteen hours, whatever a simulator happens to make most of. */
export function flatWeights(stopHours: readonly (number | null)[]): number[] {
  const bins = new Map<number, number>()
  const known = stopHours.filter((hour) => hour !== null)
  for (const hour of known) bins.set(Math.floor(hour), (bins.get(Math.floor(hour)) ?? 0) + 1)
  return stopHours.map((hour) => {
    if (hour === null) return 1
    if (hour < 2 || hour > 13) return 0.3
    const density = (bins.get(Math.floor(hour)) ?? 1) / known.length
    return Math.min(Math.max(0.09 / density, 0.3), 4)
  })
}
