import type { Ms } from '../../../server/contract/fold.ts'
import type { Lesson, Prior } from '../../../server/contract/learnt.ts'
import type { RecordingHeader, RecordingLine } from '../../../server/contract/recording.ts'
import type { Call } from '../../../server/contract/vocabulary.ts'
import { makeKilnFold } from '../../../server/domain/firing/fold.ts'
import { mean } from '../../../server/domain/firing/history.ts'
import { intakeFold } from '../../../server/domain/intake/fold.ts'
import { pair, rangeSignsNow } from '../../../server/domain/estimate/pair.ts'
import { playLines } from '../../../server/recordings/play.ts'
import type { Effect } from '../../../server/runtime/driver.ts'
import { gridS } from '../../../server/simulator/firing/course.ts'
import { recordingOf } from '../../../server/simulator/firing/recording.ts'
import type { Firing } from '../../../server/simulator/firing/world.ts'
import type { FiringRows } from './rows.ts'
import { forecastCalls } from './score.ts'

/** A call that came due or was withdrawn, and a range that was told; hours after lighting. */
export interface Told {
  calls: { call: Call; state: string; at: number }[]
  forecasts: { call: Call; at: number; earliest: number; latest: number }[]
}

/** What the service made of one simulated firing. */
export interface Watched extends Told {
  rows: FiringRows
  /** Estimated and true smoke, wall as read; one point every four minutes, °C. */
  curve: { hour: number; estimated: number; smoke: number; wall: number }[]
  /** What it taught of its kiln. */
  lessons: Lesson[]
  /** The common worth each minute from lighting on, -2..1; null before there is one. */
  worth: (number | null)[]
}

/** What the service may use of what there is: its smoke probe and from when that reads open (hours), what the operator saw, the sealed part. */
export interface Use {
  smoke: boolean
  smokeFailsAtH: number | null
  sights: boolean
  sealed: boolean
  /** What earlier firings of this kiln taught. */
  prior?: Prior | undefined
}

const litMs = Date.UTC(2026, 2, 1, 6)
const rowEveryMs = 240_000
const teachesWithinMs = 120_000
const hourMs = 3_600_000
const short = (value: number): number => Number(value.toFixed(4))

/** The firing with the smoke probe left out, or broken from some hour on. */
function probed(firing: Firing, { smoke, smokeFailsAtH }: Use): Firing {
  const { sampled } = firing
  const channels = sampled.channels
    .filter(({ name }) => smoke || name !== 'smoke')
    .map((channel) => {
      if (channel.name !== 'smoke' || smokeFailsAtH === null) return channel
      const from = (smokeFailsAtH * 3600 - sampled.fromS) / gridS
      return { ...channel, values: channel.values.map((value, i) => (i < from ? value : ('open' as const))) }
    })
  return { ...firing, sampled: { ...sampled, channels } }
}

/** Plays a firing through the driver and the folds of the service, as a replay does. */
export function watch(name: string, firing: Firing, use: Use): Watched {
  const { truth } = firing
  const untilS = use.sealed ? undefined : truth.sealed + 60
  const [header, ...all] = recordingOf(probed(firing, use), {
    title: name,
    litMs,
    node: 'yard/n1',
    ...(untilS === undefined ? {} : { untilS }),
  })
  const lines = (all as unknown as RecordingLine[]).filter((line) => use.sights || !('action' in line && line.action === 'observe'))
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
    sealed: truth.sealed / 3600,
    hours: [],
    flow: [],
    smokeC: [],
    x: [],
    ranges: [],
  }
  const watched: Watched = { rows, calls: [], forecasts: [], curve: [], lessons: [], worth: [] }
  const after = (at: Ms): number => (at - litMs) / hourMs
  const real = { 'start-collecting': rows.start, 'stop-collecting': rows.stop, seal: rows.seal }
  let nextRow = litMs + rowEveryMs
  let askedAt: Ms | null = null
  const fold = makeKilnFold(pair)
  const kiln: typeof fold = {
    ...fold,
    start: (config) => fold.start(use.prior === undefined ? config : { ...config, prior: use.prior }),
    step(state, input) {
      const result = fold.step(state, input)
      const { estimate, model, calls, forecastAt } = result.state
      if (model && estimate && forecastAt !== null && forecastAt !== askedAt) {
        askedAt = forecastAt
        const signs = rangeSignsNow(model)
        for (const call of forecastCalls) {
          const due = real[call]
          if (calls[call].forecast === null || due === null || after(forecastAt) >= due) continue
          rows.ranges.push({ call, at: short(after(forecastAt)), signs: (signs?.[call] ?? []).map(short) })
        }
      }
      while (model && litMs + watched.worth.length * 60_000 <= input.at)
        watched.worth.push(model.common === null ? null : short(model.common))
      if (input.at >= nextRow && after(input.at) <= rows.sealed && model && estimate) {
        nextRow += rowEveryMs
        const smokeC = firing.course.smoke[Math.floor((input.at - litMs) / 1000 / gridS)] ?? null
        rows.hours.push(short(after(input.at)))
        rows.flow.push(short(estimate.condensateKgH))
        rows.smokeC.push(smokeC === null ? null : Number(smokeC.toFixed(1)))
        rows.x.push(Array.from(model.ensemble.features, short))
        const wall = mean(result.state.past.wall, 10) ?? NaN
        watched.curve.push({ hour: after(input.at), estimated: estimate.smokeC, smoke: smokeC ?? NaN, wall })
      }
      return result
    },
  }
  const recording = { header: header as unknown as RecordingHeader, lines }
  const hear = (effects: readonly Effect[]): void => {
    for (const effect of effects) {
      if (effect.kind !== 'output') continue
      const { output } = effect
      if (output.kind === 'lesson') watched.lessons.push(output.lesson)
      if (output.kind === 'call' && output.state !== 'done')
        watched.calls.push({ call: output.call, state: output.state, at: after(output.at) })
      if (output.kind === 'forecast')
        watched.forecasts.push({ call: output.call, at: after(output.at), earliest: after(output.earliest), latest: after(output.latest) })
    }
  }
  const steps = playLines({ intake: intakeFold, kiln }, recording)
  let step = steps.next()
  for (; !step.done; step = steps.next()) hear(step.value.effects)
  // what it taught is told at the next full minute
  hear(step.value.advance(step.value.state.at + teachesWithinMs))
  return watched
}
