import { coolingCount, coolingState, coolingStepH, coolingValue, coolStep, sealAt, slowed } from '../kiln/cooling.ts'
import { nextNormal, nextUniform } from './random.ts'

// The sealed kiln's own small ensemble: every member is the whole cooling since sealing, run again for each move.

const count = 48
/** Ten-minute beats kept: three days; after that the kiln is cold or leaks. */
const longest = 432
const movesPerBeat = 240
const wallK = 1.2
const wallShare = 0.02
const temper = 0.35
/** Wet wood over charcoal in heat kept, and the share of charring from which the bed counts as charcoal. */
const woodOverCharcoal = 6
const charredEnough = 0.7
const silentBeats = 6
const unknownC = 999
const rawMouthK = 90
const rawMouthH = 10

export interface Sealed {
  length: number
  wall: Float32Array
  air: Float32Array
  core: Float32Array
  latents: Float64Array
  values: Float64Array
  fits: Float64Array
  leaks: Int32Array
  /** Hottest part by member now, °C. */
  hottest: Float64Array
  next: number
  /** How much slower than charcoal the charge cools: 1 when charred through. */
  slow: number
  upperC: number
  leakChance: number
}

export function emptySealed(): Sealed {
  return {
    length: 0,
    wall: new Float32Array(longest),
    air: new Float32Array(longest),
    core: new Float32Array(longest),
    latents: new Float64Array(count * coolingCount),
    values: new Float64Array(count * coolingCount),
    fits: new Float64Array(count),
    leaks: new Int32Array(count),
    hottest: new Float64Array(count),
    next: 0,
    slow: 1,
    upperC: unknownC,
    leakChance: 0,
  }
}

/** Fit of one member to all that was read since sealing; leaves its state at the present in `x`. It only falls: at `bar` it is given up. */
function wholeFit(s: Sealed, v: Float64Array, q: number, leaks: number, x: Float64Array, bar: number): number {
  sealAt(x, 0, v, q, s.wall[0] as number, s.air[0] as number)
  let fit = 0
  for (let k = 0; k < s.length && fit > bar; k++) {
    if (k > 0) coolStep(x, 0, v, q, s.air[k] as number, leaks)
    const wall = s.wall[k] as number
    if (wall === wall && k % 3 === 0) {
      const r = (wall - (x[1] as number)) / (wallK + wallShare * Math.abs(wall - (s.air[k] as number)))
      fit -= temper * 2.5 * Math.log(1 + (r * r) / 4)
    }
    const core = s.core[k] as number
    if (core === core) {
      const r = (core - (x[3] as number)) / (3 + 0.05 * Math.abs(core - (s.air[k] as number)))
      fit -= temper * 2.5 * Math.log(1 + (r * r) / 4)
    }
  }
  return fit
}

/** Draws the members at sealing. */
export function startSealed(s: Sealed, charShare: number, word: Uint32Array): void {
  s.slow = 1 + woodOverCharcoal * Math.max(0, 1 - charShare / charredEnough)
  for (let i = 0; i < s.latents.length; i++) {
    s.latents[i] = nextNormal(word)
    s.values[i] = slowed(i % coolingCount, coolingValue(i % coolingCount, s.latents[i] as number), s.slow)
  }
  for (let m = 0; m < count; m++) s.leaks[m] = m % 8 === 0 ? 1 : 0
}

/** Takes one beat of ten minutes and moves members; NaN where nothing was read. */
export function sealedBeat(s: Sealed, wallC: number, airC: number, coreC: number, word: Uint32Array): void {
  if (s.length < longest) {
    s.wall[s.length] = s.length === 0 && wallC !== wallC ? airC + 150 : wallC
    s.air[s.length] = airC
    s.core[s.length] = coreC
    s.length++
  }
  const x = new Float64Array(coolingState)
  const kilns = new Float64Array(count * coolingState)
  for (let m = 0; m < count; m++) {
    s.fits[m] = wholeFit(s, s.values, m * coolingCount, s.leaks[m] as number, x, -Infinity)
    kilns.set(x, m * coolingState)
  }
  const z = new Float64Array(coolingCount)
  const v = new Float64Array(coolingCount)
  for (let k = 0; k < movesPerBeat; k++) {
    const m = s.next
    s.next = (m + 1) % count
    const a = (m + 1 + Math.floor(nextUniform(word) * (count - 1))) % count
    let b = (m + 1 + Math.floor(nextUniform(word) * (count - 1))) % count
    if (b === a) b = (b + 1) % count
    const afresh = nextUniform(word) < 0.05
    const leap = nextUniform(word) < 0.1 ? 1 : 0.2 + 0.6 * nextUniform(word)
    let prior = 0
    for (let i = 0; i < coolingCount; i++) {
      const own = s.latents[m * coolingCount + i] as number
      z[i] = afresh
        ? nextNormal(word)
        : own + leap * ((s.latents[a * coolingCount + i] as number) - (s.latents[b * coolingCount + i] as number)) + 0.1 * nextNormal(word)
      v[i] = slowed(i, coolingValue(i, z[i] as number), s.slow)
      if (!afresh) prior += 0.5 * (own * own - (z[i] as number) * (z[i] as number))
    }
    const leaks = nextUniform(word) < 0.1 ? 1 - (s.leaks[m] as number) : (s.leaks[m] as number)
    // one sealing in eight leaks: own judgement
    if (leaks !== (s.leaks[m] as number)) prior += leaks === 1 ? -1.95 : 1.95
    const bar = Math.log(nextUniform(word) + 1e-12) + (s.fits[m] as number) - prior
    const fit = wholeFit(s, v, 0, leaks, x, bar)
    if (fit > bar) {
      kilns.set(x, m * coolingState)
      s.latents.set(z, m * coolingCount)
      s.values.set(v, m * coolingCount)
      s.leaks[m] = leaks
      s.fits[m] = fit
    }
  }
  let leaking = 0
  let mean = 0
  let square = 0
  const air = s.air[s.length - 1] as number
  for (let m = 0; m < count; m++) {
    const hottest = Math.max(kilns[m * coolingState] as number, kilns[m * coolingState + 3] as number)
    s.hottest[m] = hottest
    leaking += (s.leaks[m] as number) / count
    const log = Math.log(Math.max(0.5, hottest - air))
    mean += log / count
    square += (log * log) / count
  }
  const sd = Math.sqrt(Math.max(0, square - mean * mean))
  // one-sided 99.9 % of a spread that grows with the warmth left, and one kelvin for the air's own reading
  s.upperC = air + Math.exp(mean + 3.1 * sd) + 1
  // where the wood never charred, the mouth's end stays warm out of the wall probe's sight
  const hours = (s.length - 1) * coolingStepH
  if (s.slow > 1.5) s.upperC = Math.max(s.upperC, air + rawMouthK * Math.exp(-hours / rawMouthH))
  let heard = false
  for (let k = Math.max(0, s.length - silentBeats); k < s.length; k++)
    heard ||= !Number.isNaN(s.wall[k] as number) || !Number.isNaN(s.core[k] as number)
  // without drum or core nothing can be said of the hottest part
  if (!heard) s.upperC = unknownC
  s.leakChance = leaking
}
