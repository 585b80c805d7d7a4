import type { Reason } from '../../contract/fold.ts'
import type { TimeRange } from '../../contract/live.ts'
import type { DripLook } from '../../contract/vocabulary.ts'
import { addHeat, featuresOf, smokeRead } from './features.ts'
import { classesNow, hoursUntil, smokeNow, type Correction } from './correction.ts'
import type { Settings } from './settings.ts'
import type { EnsembleState, Seen } from './shape.ts'
import { beatS } from './size.ts'
import { look } from './standing.ts'
import { without, withSmoke } from './tables/correction.ts'
import type { Advice } from './types.ts'

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
const heedMin = 40
const atOnceMin = 6
const outBeats = 5
/** Odds by which a fresh look of the drip shifts the classes: own judgement, from how glasses and shares went together in simulated firings. */
const heedOdds = {
  none: [1, 1, 1],
  clear: [1, 9, 0.2],
  pale: [4, 0.7, 0.3],
  amber: [2, 0.2, 0.8],
  dark: [1, 0.1, 20],
  black: [0.3, 0.1, 30],
} as const

/** The newest look of the drip and how long ago it was taken, minutes. */
function lastDrip(s: EnsembleState): { look: DripLook; age: number } | null {
  const now = s.history.length
  let newest: Seen | undefined
  for (const seen of s.seen) if (seen.drip !== undefined && seen.beat <= now && (!newest || seen.beat >= newest.beat)) newest = seen
  return newest?.drip === undefined ? null : { look: newest.drip, age: ((now - newest.beat) * beatS) / 60 }
}

/** What the operator saw of the drip weighs more than the estimate, for a while. */
function heed(c: Classes, drip: { look: DripLook; age: number } | null): Classes {
  if (!drip) return c
  const fresh = Math.exp(-drip.age / heedMin)
  const by = heedOdds[drip.look].map((odds) => Math.exp(fresh * Math.log(odds))) as [number, number, number]
  const [good, watery, tarry] = [c.good * by[0], c.watery * by[1], c.tarry * by[2]]
  const all = good + watery + tarry
  return { good: good / all, watery: watery / all, tarry: tarry / all }
}

/** A small fire that is kept, but has gone out: what never caught will not give vinegar, however warm the firebox was. */
function fireOut(s: EnsembleState): boolean {
  if (s.standing.start) return false
  const h = s.history
  let warm = 0
  for (let k = Math.max(0, h.length - outBeats); k < h.length; k++) if ((h.fire[k] as number) > s.config.limits.fireOutC) warm++
  return warm === 0
}

/** After each beat: what stands advised, and when the calls will come. */
export function judge(s: EnsembleState, set: Settings): void {
  const e = s.estimate
  if (!e) return
  addHeat(s)
  featuresOf(s, s.features)
  if (s.history.length < firstBeat) return
  const smoke = smokeRead(s)
  const correction = correctionFor(smoke)
  const drip = lastDrip(s)
  s.smokeShiftK = 0
  const c = heed(classesNow(correction, s.features), drip)
  const worth = s.config.worth
  const worthNow = Math.max(leastFlowKgH, e.condensateKgH) * (worth.good * c.good + worth.tarry * c.tarry + worth.watery * c.watery)
  const done = Number.isNaN(smoke) ? e.charShare > set.sealCharThree : smoke > set.sealSmokeC && e.charShare > set.sealSmokeChar
  look(s.standing, set, s.config.way === 'kept' && fireOut(s) ? Math.min(0, worthNow) : worthNow, done, beatMin, !Number.isNaN(smoke))
  // a look just taken outranks smoothing and confirmation
  if (drip && drip.age <= atOnceMin) {
    if (drip.look === 'pale' || drip.look === 'amber') s.standing.start ||= worthNow > set.startAbove
    if (drip.look === 'dark' || drip.look === 'black') s.standing.stop ||= s.standing.start
  }
  const range = (call: keyof Correction['until']): TimeRange => {
    const [earliest, likely, latest] = hoursUntil(correction, call, s.features).map((h) => s.at + Math.round(h * 3600000)) as [
      number,
      number,
      number,
    ]
    return { earliest, likely, latest }
  }
  if (Number.isNaN(smoke)) {
    const [low, middle, high] = smokeNow(correction, s.features)
    const coolest = Math.max(s.airC, s.history.outlet[s.history.length - 1] as number)
    s.smokeShiftK = Math.max(coolest, middle) - e.smokeC
    s.estimate = { ...e, smokeC: e.smokeC + s.smokeShiftK, smokeSd: Math.max(1, (high - low) / 3) }
  }
  s.told = { start: range('start'), stop: range('stop'), seal: range('seal') }
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
  const unsure = e ? e.smokeSd : 99
  return {
    collectWorthPerH: e ? st.worth : null,
    startCollecting: st.start,
    stopCollecting: st.stop,
    seal: st.seal,
    hottestUpperC: sealed ? s.sealed.upperC : null,
    airLeak: sealed && s.at - s.sealedAt > leakAfterMs && s.sealed.leakChance > leakChance,
    because,
    sure: unsure < 10 ? 'high' : unsure < 30 ? 'middle' : 'low',
  }
}
