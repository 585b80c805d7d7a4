import { median } from '../channels/robust.ts'
import { benchLength } from '../kiln/zone.ts'
import { adviceOf, judge } from './judge.ts'
import { knownOf, lessonOf } from './known.ts'
import { closeBeat, light, move, rowMedian, runOn } from './live.ts'
import { freeze, thaw } from './pack.ts'
import { readMembers } from './reading.ts'
import { emptyRunOn } from './runon.ts'
import { sealedBeat, startSealed } from './sealed.ts'
import { defaultSettings, type Settings } from './settings.ts'
import { channelRows, emptyMembers, emptyMove, emptyState, type EnsembleState } from './shape.ts'
import { beatS, gridsPerBeat, memberCount } from './size.ts'
import type { Estimator, EstimatorForecast, Evidence, GridReadings } from './types.ts'

const sealedBeatS = 600
const sealedEvery = sealedBeatS / beatS
const mostSeen = 300

function take(s: EnsembleState, e: Evidence): void {
  if (e.kind === 'charge') s.charge = { ...s.charge, ...e.charge }
  else if (e.kind === 'lit') {
    if (s.litAt < 0) light(s)
  } else if (e.kind === 'known') {
    if (s.litAt < 0) s.known = knownOf(e.prior)
  } else if (s.litAt < 0) return
  else if (e.kind === 'sealed') {
    if (s.sealedAt >= 0) return
    s.sealedAt = e.at
    s.lesson = lessonOf(s)
    // the burning kiln's own is done with, and zeros take no room when frozen
    s.members = emptyMembers(memberCount)
    s.move = emptyMove()
    s.run = emptyRunOn()
    startSealed(s.sealed, s.estimate?.charShare ?? 0, s.word)
  } else if (e.kind === 'air') {
    s.mouth = e.mouth ?? s.mouth
    s.chimney = e.chimney ?? s.chimney
  } else if (s.seen.length < mostSeen) {
    // an entry for an earlier beat counts from the members' next runs through the history
    const beat = Math.max(0, Math.floor((e.at - s.litAt) / 1000 / beatS))
    if (e.kind === 'drip') s.seen.push({ beat, drip: e.look })
    else if (e.kind === 'smoke') s.seen.push({ beat, smoke: e.look })
  }
}

function write(s: EnsembleState, r: GridReadings): void {
  const row = [r.fireboxC, r.wallC, r.outletC, r.smokeC, r.ambientC, r.coreC]
  for (let c = 0; c < channelRows; c++) s.beat[c * gridsPerBeat + s.filled] = row[c] ?? NaN
  s.filled++
}

const shiftFadesMs = 3 * 3600000

/** The members' own fan, begun where the corrected smoke is; what is hours ahead keeps what they say. */
function shifted(p: EnsembleState['view'][number], s: EnsembleState): EnsembleState['view'][number] {
  const by = s.smokeShiftK * Math.exp(-Math.max(0, p.t - s.at) / shiftFadesMs)
  return { t: p.t, low: p.low + by, middle: p.middle + by, high: p.high + by }
}

/** Grid readings before lighting whose middle is the air: two and a half minutes, so that one wrong number is none. Common practice, no source. */
const coldReadings = 15

function before(s: EnsembleState, r: GridReadings): void {
  const cold = r.ambientC ?? r.outletC ?? r.wallC
  // a drum still warm from the last firing is no air
  if (cold === null || cold >= 45) return
  s.cold.push(cold)
  if (s.cold.length > coldReadings) s.cold.shift()
  s.airC = median(s.cold)
}

/** Estimator with settings of its own; `ensemble` is the one in use. */
export function makeEnsemble(set: Settings): Estimator<EnsembleState> {
  const scratch = new Float64Array(benchLength)
  return {
    version: 6,
    start: emptyState,
    step(s, r, evidence) {
      s.at = r.at
      for (const e of evidence) take(s, e)
      if (s.litAt < 0) {
        before(s, r)
        return s
      }
      write(s, r)
      if (s.filled === gridsPerBeat) {
        s.filled = 0
        if (s.sealedAt < 0) {
          closeBeat(s, set, scratch)
          s.estimate = readMembers(s)
          judge(s, set)
        } else if (Math.floor((s.at - s.sealedAt) / 1000 / beatS) % sealedEvery === 0) {
          const air = [rowMedian(s, 4, gridsPerBeat), rowMedian(s, 2, gridsPerBeat), s.airC].find((v) => !Number.isNaN(v)) ?? s.airC
          sealedBeat(s.sealed, rowMedian(s, 1, gridsPerBeat), air, rowMedian(s, 5, gridsPerBeat), s.word)
        }
      }
      if (s.sealedAt < 0) {
        move(s, set, scratch)
        runOn(s, set, scratch)
      }
      return s
    },
    estimate: (s) => s.estimate,
    advice: adviceOf,
    forecast(s): EstimatorForecast {
      const calls: EstimatorForecast['calls'] = {}
      if (s.sealedAt < 0) {
        if (s.ranges.start && !s.standing.start) calls['start-collecting'] = s.ranges.start
        if (s.ranges.stop && !s.standing.stop) calls['stop-collecting'] = s.ranges.stop
        if (s.ranges.seal && !s.standing.seal) calls.seal = s.ranges.seal
      }
      return { calls, view: { at: s.at, smoke: s.sealedAt < 0 ? s.view.map((p) => shifted(p, s)) : [] } }
    },
    lesson: (s) => s.lesson,
    freeze,
    thaw: (bytes) => thaw(bytes) as EnsembleState,
  }
}

export const ensemble: Estimator<EnsembleState> = makeEnsemble(defaultSettings)
