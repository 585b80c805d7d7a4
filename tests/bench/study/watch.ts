import { defaultLimits, type Charge, type KilnConfig } from '../../../server/contract/fold.ts'
import { makeEnsemble } from '../../../server/domain/estimate/ensemble.ts'
import type { Settings } from '../../../server/domain/estimate/settings.ts'
import type { Evidence, GridReadings } from '../../../server/domain/estimate/types.ts'
import { actsOf } from '../../../server/simulator/firing/recording.ts'
import type { Firing } from '../../../server/simulator/firing/world.ts'
import { gridColumns, gridOf } from './worlds-grid.ts'
import type { Decision, FiringRows } from './rows.ts'

/** What the estimator made of one simulated firing. */
export interface Watched {
  rows: FiringRows
  decision: Decision
  /** Estimated and true smoke, wall as read; one point every four minutes, °C. */
  curve: { hour: number; estimated: number; smoke: number; wall: number }[]
  /** Forecast ranges told every five minutes before the call was really due: inside or not. */
  told: { call: 'start' | 'stop' | 'seal'; inside: boolean; widthMin: number; offMin: number }[]
  /** Sealed part: bound under 45 °C first at, h after sealing; the hottest part was under 45 and 50 °C at. */
  sealed: { calledH: number | null; below45H: number | null; below50H: number | null; leakToldH: number | null; leaks: boolean }
  millisecondsAStep: number
}

const rowEveryS = 240
const spikeWindow = 7

export function configOf(charge: Charge, seed: number): KilnConfig {
  return {
    kiln: 'study',
    name: 'study',
    volumeL: 200,
    cover: 'earth',
    way: 'kept',
    charge,
    roles: {},
    calibration: {},
    limits: defaultLimits,
    worth: { good: 1, tarry: -2, watery: -0.25 },
    altitudeM: 0,
    seed,
  }
}

/** Median of the last readings of a column, as intake's outlier test would leave them; null without any. */
function steady(column: Float32Array, i: number): number | null {
  const near = [...column.subarray(Math.max(0, i - spikeWindow + 1), i + 1)].filter((v) => !Number.isNaN(v)).sort((a, b) => a - b)
  return near[Math.floor(near.length / 2)] ?? null
}

function evidenceOf(act: ReturnType<typeof actsOf>[number], sights: boolean): Evidence[] {
  const at = act.atS * 1000
  const a = act.act
  if (a.action === 'light') return [{ at, kind: 'lit' }]
  if (a.action === 'seal') return [{ at, kind: 'sealed' }]
  if (a.action !== 'observe' || !sights) return []
  return [
    ...(a.smoke ? [{ at, kind: 'smoke', look: a.smoke } as const] : []),
    ...(a.drip ? [{ at, kind: 'drip', look: a.drip } as const] : []),
  ]
}

/** Runs the estimator over a simulated firing; `smoke` and `sights` say what it may use of what there is. */
export function watch(name: string, firing: Firing, set: Settings, use: { smoke: boolean; sights: boolean; sealed: boolean }): Watched {
  const { about, columns } = gridOf(firing)
  const { rows: count, fromS, stepS } = about
  const all = new Float32Array(columns.buffer)
  const column = (c: (typeof gridColumns)[number]): Float32Array =>
    all.subarray(gridColumns.indexOf(c) * count, (gridColumns.indexOf(c) + 1) * count)
  const probes = {
    fireboxC: column('firebox'),
    wallC: column('wall'),
    outletC: column('outlet'),
    smokeC: column('smoke'),
    ambientC: column('ambient'),
    coreC: column('core'),
  }
  const trueSmoke = column('trueSmoke')
  const ensemble = makeEnsemble(set)
  const record = firing.plan.record ?? {}
  let s = ensemble.start(configOf(record, 11))
  const { truth } = firing
  const hour = (t: number | null): number | null => (t === null ? null : t / 3600)
  const rows: FiringRows = {
    name,
    smoke: use.smoke,
    kind: firing.plan.kind,
    minutes: truth.minutes,
    bestValue: truth.best.value,
    start: hour(truth.best.from),
    stop: hour(truth.best.to),
    seal: hour(truth.sealDue),
    hours: [],
    flow: [],
    smokeC: [],
    x: [],
  }
  const decision: Decision = { start: null, stop: null, seal: null }
  const curve: Watched['curve'] = []
  const told: Watched['told'] = []
  const after = (t: number | null): number | null => (t === null ? null : (t - truth.sealed) / 3600)
  const sealed: Watched['sealed'] = {
    calledH: null,
    below45H: after(truth.hottestBelow[45]),
    below50H: after(truth.hottestBelow[50]),
    leakToldH: null,
    leaks: truth.incidents.airLeak.length > 0,
  }
  const acts = actsOf(firing)
  let next = 0
  let steps = 0
  const began = performance.now()
  for (let i = 0; i < count; i++) {
    const t = fromS + i * stepS
    if (t > truth.sealed && !use.sealed) break
    const evidence: Evidence[] = []
    for (let act = acts[next]; act && act.atS <= t; act = acts[++next]) evidence.push(...evidenceOf(act, use.sights))
    const reading = { at: t * 1000, bottleKg: null } as GridReadings
    for (const [key, values] of Object.entries(probes))
      reading[key as keyof typeof probes] = key === 'smokeC' && !use.smoke ? null : steady(values, i)
    s = ensemble.step(s, reading, evidence)
    steps++
    const advice = ensemble.advice(s)
    const h = t / 3600
    if (t <= truth.sealed) {
      if (advice.startCollecting) decision.start ??= h
      if (advice.stopCollecting) decision.stop ??= h
      if (advice.seal) decision.seal ??= h
      if (t > 0 && t % rowEveryS < stepS && s.estimate) {
        const x = s.features
        rows.hours.push(Number(h.toFixed(4)))
        rows.flow.push(Number(s.estimate.condensateKgH.toFixed(4)))
        rows.smokeC.push(Number.isNaN(trueSmoke[i]) ? null : Number((trueSmoke[i] ?? 0).toFixed(1)))
        rows.x.push(Array.from(x, (v) => Number(v.toFixed(4))))
        curve.push({ hour: h, estimated: s.estimate.smokeC, smoke: trueSmoke[i] ?? NaN, wall: reading.wallC ?? NaN })
      }
      if (t > 0 && t % 300 < stepS) {
        const calls = ensemble.forecast(s).calls
        for (const [call, range, real] of [
          ['start', calls['start-collecting'], rows.start],
          ['stop', calls['stop-collecting'], rows.stop],
          ['seal', calls.seal, rows.seal],
        ] as const)
          if (range && real !== null && h < real) {
            const [low, high] = [range.earliest / 3600000, range.latest / 3600000]
            told.push({
              call,
              inside: low <= real && real <= high,
              widthMin: (high - low) * 60,
              offMin: 60 * Math.max(0, low - real, real - high),
            })
          }
      }
    } else {
      const since = (t - truth.sealed) / 3600
      if (since > 2 && (advice.hottestUpperC ?? 999) < 45) sealed.calledH ??= since
      if (advice.airLeak) sealed.leakToldH ??= since
    }
  }
  return { rows, decision, curve, told, sealed, millisecondsAStep: (performance.now() - began) / steps }
}
