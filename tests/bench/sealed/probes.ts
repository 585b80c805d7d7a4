import type { Chance } from '../../../server/simulator/chance.ts'
import { leadMin, type Course } from './course.ts'

/** What the probes say of a sealed phase, one level a minute as the fold keeps them; NaN where nothing good came. */
export interface Readings {
  firebox: Float32Array
  wall: Float32Array
  outlet: Float32Array
  smoke: Float32Array | null
  ambient: Float32Array | null
  core: Float32Array | null
  /** Wall over air while all was cold before the fire, K; null where nothing was heard then. */
  coldWallK: number | null
  /** Dry wood, kg, as it was weighed and its moisture guessed; null where nobody did. */
  woodKg: number | null
  /** Minutes from the seal at which the wall probe came off, and how. */
  off: { minute: number; how: 'off' | 'slipped' } | null
}

/** A core probe in every night, or in as many as a yard has. */
export type Core = 'all' | 'some'

/** Probes in the open read the sun as well, and below the air on clear nights. */
interface Open {
  sunK: number
  skyK: number
}

/** `kiln`: the chance that settled which probes its kiln has, where it has other nights too. */
export function readings(
  course: Course,
  chance: Chance,
  sunAt: (minute: number) => number,
  fitted: Core = 'some',
  kiln: Chance = chance,
): Readings {
  const n = course.wall.length
  const off = drawOff(chance.branch('off'))
  const wallOffset = 1.5 * chance.normal()
  const driftKPerH = 0.02 * chance.normal()
  const open = (dice: Chance): Open => ({ sunK: dice.often(0.5) ? 0 : dice.between(0, 0.6), skyK: dice.between(0, 1.2) })
  const outside = open(chance.branch('outlet'))
  const shaded = open(chance.branch('ambient'))
  const read = (name: string, truth: (i: number) => number, offset: number, noise: number): Float32Array => {
    const dice = chance.branch(name)
    const out = new Float32Array(n)
    for (let i = 0; i < n; i++) out[i] = truth(i) + offset + noise * dice.normal()
    drop(out, dice)
    return out
  }
  const weather = (of: Open, i: number): number => {
    const sun = sunAt(i - leadMin)
    return of.sunK * sun - (sun > 0 ? 0 : of.skyK)
  }
  const lag = offWall(course, off, chance.branch('hangs'))
  const has = kiln.branch('has')
  const outletOffset = 0.7 * chance.normal()
  const ambientOffset = 0.4 * chance.normal()
  const scales = chance.branch('scales')
  const ambient = has.often(0.5) ? read('ambient', (i) => (course.air[i] ?? 0) + 0.5 * weather(shaded, i), ambientOffset, 0.05) : null
  const smoke = has.often(0.45)
  const core = has.often(0.06) || fitted === 'all'
  return {
    firebox: read('firebox', (i) => course.firebox[i] ?? 0, 3 * chance.normal(), chance.between(0.1, 0.6)),
    wall: read('wall', (i) => (lag[i] ?? 0) + (driftKPerH * i) / 60, wallOffset, chance.between(0.05, 0.5)),
    outlet: read('outlet', (i) => (course.outlet[i] ?? 0) + weather(outside, i), outletOffset, 0.1),
    smoke: smoke ? read('smoke', (i) => (course.smoke[i] ?? 0) + weather(outside, i), chance.normal(), 0.2) : null,
    ambient,
    core: core ? read('core', (i) => course.core[i] ?? 0, 1.5 * chance.normal(), 0.3) : null,
    coldWallK: has.often(0.9) ? wallOffset - (ambient === null ? outletOffset : ambientOffset) + 0.8 * has.normal() : null,
    woodKg: scales.often(0.6) ? course.woodKg * Math.exp(0.07 * scales.normal()) : null,
    off,
  }
}

function drawOff(chance: Chance): Readings['off'] {
  const dice = chance.uniform()
  if (dice < 0.01) return { minute: -chance.whole(0, 200), how: 'off' }
  if (dice < 0.05) return { minute: Math.floor(chance.between(0, 24) * 60), how: 'off' }
  return dice < 0.06 ? { minute: Math.floor(chance.between(0, 12) * 60), how: 'slipped' } : null
}

/** Where the probe really sits: on the wall, deeper in the earth, or hanging in the air beside the cover. */
function offWall(course: Course, off: Readings['off'], chance: Chance): Float32Array {
  const out = Float32Array.from(course.wall)
  if (off === null) return out
  const share = off.how === 'slipped' ? 0 : chance.between(0, 0.15)
  const minutes = chance.between(2, 12)
  let seen = course.wall[0] ?? 0
  for (let i = 0; i < out.length; i++) {
    const onWall = course.wall[i] ?? 0
    const air = course.air[i] ?? 0
    const loose = off.how === 'slipped' ? (course.slipped[i] ?? 0) : air + share * ((course.slipped[i] ?? 0) - air)
    const target = i - leadMin >= off.minute ? loose : onWall
    seen = target === onWall ? onWall : seen + (target - seen) / minutes
    out[i] = seen
  }
  return out
}

/** Gaps: now and then minutes, seldom hours. */
function drop(values: Float32Array, chance: Chance): void {
  if (!chance.often(0.35)) return
  const gaps = chance.whole(1, 6)
  for (let g = 0; g < gaps; g++) {
    const from = Math.floor(chance.uniform() * values.length)
    const long = chance.often(0.15) ? chance.whole(60, 400) : chance.whole(1, 40)
    values.fill(NaN, from, Math.min(values.length, from + long))
  }
}
