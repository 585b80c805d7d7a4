import type { Reason } from '../../contract/fold.ts'
import type { DripLook } from '../../contract/vocabulary.ts'
import { addHeat, featuresOf, smokeRead } from './features.ts'
import { classesNow, smokeNow, type Correction } from './correction.ts'
import type { Settings } from './settings.ts'
import type { EnsembleState, Seen } from './shape.ts'
import { beatS } from './size.ts'
import { hear, standsIn } from './stand-in.ts'
import { look } from './standing.ts'
import { without, withSmoke } from './tables/correction.ts'
import type { Advice } from './types.ts'

/** Twenty minutes: readings are compared every third beat. */
const weighedBeats = 10
const beatMin = beatS / 60
const firstBeat = 12
/** A drip below this says little about its worth, yet must not silence a stop. */
const leastFlowKgH = 0.3
/** A leak is told once two members in five need one, where one sealing in eight was thought to leak; firings with a tight seal stayed below 0.2. */
const leakChance = 0.4
const leakAfterMs = 4 * 3600000

/** Correction apart for kilns with and without a living smoke probe: when the probe fails, the model takes over. */
function correctionFor(smoke: number): Correction {
  return Number.isNaN(smoke) ? without : withSmoke
}

type Classes = ReturnType<typeof classesNow>
type Odds = readonly [good: number, watery: number, tarry: number]
const heedMin = 40
const atOnceMin = 6
const outBeats = 5
/** Below this share of acids by every account nothing is started: a third of where condensate counts as watery. */
const leastAcid = 0.01
const laterMin = 30
/**
 * Odds by which a look of the drip shifts the classes (good, watery, tar-laden), just taken and half an hour later: how looks and shares
 * went together in 500 simulated firings, people who err by a shade included. Amber is still good when seen and on its way to tar.
 */
const heedOdds: Record<DripLook, readonly [fresh: Odds, later: Odds]> = {
  none: [
    [1, 1, 1],
    [1, 1, 1],
  ],
  clear: [
    [1, 9, 0.2],
    [1, 3, 0.4],
  ],
  pale: [
    [4, 0.7, 0.3],
    [3, 0.8, 0.5],
  ],
  amber: [
    [1.2, 0.3, 1],
    [0.8, 0.4, 2],
  ],
  dark: [
    [1, 0.1, 20],
    [1, 0.1, 15],
  ],
  black: [
    [0.3, 0.1, 30],
    [0.3, 0.1, 20],
  ],
}
/** The newest look of the drip and how long ago it was taken, minutes. */
function lastDrip(s: EnsembleState): { look: DripLook; age: number } | null {
  const now = s.history.length
  let newest: Seen | undefined
  for (const seen of s.seen) if (seen.drip !== undefined && seen.beat <= now && (!newest || seen.beat >= newest.beat)) newest = seen
  return newest?.drip === undefined ? null : { look: newest.drip, age: ((now - newest.beat) * beatS) / 60 }
}

/** What the operator saw of the drip weighs beside the estimate, ageing, and fading once it is half an hour old. */
function heed(c: Classes, drip: { look: DripLook; age: number } | null): Classes {
  if (!drip) return c
  const [fresh, later] = heedOdds[drip.look]
  const aged = Math.min(1, drip.age / laterMin)
  const kept = Math.exp(-Math.max(0, drip.age - laterMin) / heedMin)
  const odds = (k: number): number => Math.exp(kept * ((1 - aged) * Math.log(fresh[k] ?? 1) + aged * Math.log(later[k] ?? 1)))
  const [good, watery, tarry] = [c.good * odds(0), c.watery * odds(1), c.tarry * odds(2)]
  const all = good + watery + tarry
  return { good: good / all, watery: watery / all, tarry: tarry / all }
}

/** Where the members differ by so much, nobody knows the smoke, K: nothing stands in for its probe. */
const unsureK = 30

const hourBeats = 3600 / beatS
const flatBeats = 5

/** How fast the wall climbed in the last hour, K/h; null without readings. */
function wallClimb({ history }: EnsembleState): number | null {
  const around = (to: number): number => {
    const read = [...history.wall.subarray(Math.max(0, to - flatBeats), Math.max(0, to))].filter((v) => !Number.isNaN(v))
    return read.reduce((a, b) => a + b, 0) / read.length
  }
  const climb = around(history.length) - around(history.length - hourBeats)
  return Number.isNaN(climb) ? null : climb
}

/** Charring looks done: far on, and nothing warms any more or the smoke is thin; or, without a smoke probe, long after it was nearly so. */
function isDone(s: EnsembleState, set: Settings, smoke: number, charred: number): boolean {
  if (charred > set.sealNearChar && s.nearBeat < 0) s.nearBeat = s.history.length
  if (!Number.isNaN(smoke)) return charred > set.sealChar && smoke > set.sealSmokeC
  const climb = wallClimb(s)
  const flat = charred > set.sealChar && climb !== null && climb < set.sealFlatKPerH
  return flat || (s.nearBeat > 0 && s.history.length >= set.sealOverNear * s.nearBeat)
}

/** A small fire that is kept, but has gone out: what never caught will not give vinegar, however warm the firebox was. */
function fireOut(s: EnsembleState): boolean {
  const h = s.history
  let warm = 0
  for (let k = Math.max(0, h.length - outBeats); k < h.length; k++) if ((h.fire[k] as number) > s.config.limits.fireOutC) warm++
  return warm === 0
}

/** Readings that the members were weighed by: before there are some, or once they stop, a narrow spread is no knowledge. */
function isWeighed({ history }: EnsembleState): boolean {
  if (history.length < firstBeat) return false
  const heard = (row: Float32Array): boolean =>
    row.subarray(history.length - weighedBeats, history.length).some((value) => !Number.isNaN(value))
  return heard(history.wall) || heard(history.smoke)
}

/** After each beat: what stands advised. */
export function judge(s: EnsembleState, set: Settings): void {
  const e = s.estimate
  if (!e) return
  addHeat(s)
  const read = smokeRead(s)
  hear(s.standIn, read, e.smokeC)
  const smoke = !Number.isNaN(read) ? read : e.smokeSd < unsureK ? standsIn(s.standIn, e.smokeC) : NaN
  featuresOf(s, smoke, s.features)
  if (s.history.length < firstBeat) return
  const correction = correctionFor(smoke)
  const drip = lastDrip(s)
  s.smokeShiftK = 0
  const c = heed(classesNow(correction, s.features), drip)
  const worth = s.config.worth
  const worthNow = Math.max(leastFlowKgH, e.condensateKgH) * (worth.good * c.good + worth.tarry * c.tarry + worth.watery * c.watery)
  const done = isDone(s, set, smoke, e.charShare)
  const idle = !s.standing.start && ((s.config.way === 'kept' && fireOut(s)) || e.acidShare < leastAcid)
  look(s.standing, set, idle ? Math.min(0, worthNow) : worthNow, done, beatMin, !Number.isNaN(smoke))
  // a look just taken outranks smoothing and confirmation
  if (drip && drip.age <= atOnceMin) {
    if (drip.look === 'pale' || drip.look === 'amber') s.standing.start ||= !idle && worthNow > set.startAbove
    if (drip.look === 'dark' || drip.look === 'black') s.standing.stop ||= s.standing.start
  }
  if (!Number.isNaN(read)) return
  if (Number.isNaN(smoke)) {
    const [low, middle, high] = smokeNow(correction, s.features)
    const coolest = Math.max(s.airC, s.history.outlet[s.history.length - 1] as number)
    s.smokeShiftK = Math.max(coolest, middle) - e.smokeC
    s.estimate = { ...e, smokeC: e.smokeC + s.smokeShiftK, smokeSd: Math.max(1, (high - low) / 3) }
  } else {
    s.smokeShiftK = smoke - e.smokeC
    s.estimate = { ...e, smokeC: smoke }
  }
}

/** Advice of a burning or sealed kiln. */
export function adviceOf(s: EnsembleState): Advice {
  const e = s.estimate
  const st = s.standing
  const because: Advice['because'] = {}
  if (e) {
    const acid: Reason = { code: 'acid-share', value: e.acidShare, limit: 0.03 }
    const tar: Reason = { code: 'tar-share', value: e.tarShare, limit: 0.14 }
    const worth: Reason = { code: 'worth-now', value: st.worth }
    because['start-collecting'] = [acid, worth]
    because['stop-collecting'] = [tar, worth]
    because.seal = [{ code: 'charred', value: e.charShare, forS: st.sealMinutes * 60 }]
  }
  const sealed = s.sealedAt >= 0
  if (sealed) because.open = [{ code: 'hottest-upper', value: s.sealed.upperC, limit: s.config.limits.openHottestC }]
  const unsure = e && isWeighed(s) ? e.smokeSd : 99
  return {
    collectWorthPerH: e ? st.worth : null,
    startCollecting: st.start,
    stopCollecting: st.stop,
    seal: st.seal,
    hottestUpperC: sealed ? s.sealed.upperC : null,
    airLeak: sealed && s.at - s.sealedAt > leakAfterMs && s.sealed.leakChance > leakChance,
    because,
    sure: unsure < 10 ? 'high' : unsure < unsureK ? 'middle' : 'low',
  }
}
