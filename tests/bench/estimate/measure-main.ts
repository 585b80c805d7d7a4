import { makeKilnFold, kilnFold } from '../../../server/domain/firing/fold.ts'
import { intakeFold } from '../../../server/domain/intake/fold.ts'
import { points, runPoint, startRunOn } from '../../../server/domain/estimate/runon.ts'
import { beatS } from '../../../server/domain/estimate/size.ts'
import { benchLength } from '../../../server/domain/kiln/zone.ts'
import { entryOf } from '../../../server/recordings/entries.ts'
import { configOf, placeOf } from '../../../server/recordings/play.ts'
import type { Recording } from '../../../server/recordings/read.ts'
import { freezeSite, thawSite } from '../../../server/runtime/checkpoint.ts'
import { Driver, type Folds } from '../../../server/runtime/driver.ts'
import { countsThread, workedMs } from './clock.ts'
import { firings, hours } from './firings.ts'

// The figures of time and size of the estimator, each beside its limit; the bare driver (no estimator) in the same run.

let missed = 0

function tell(what: string, value: number, unit: string, limit: number | null = null): void {
  const isMissed = limit !== null && value > limit
  if (isMissed) missed++
  const verdict = limit === null ? '' : `  limit ${limit} ${unit}  ${isMissed ? 'MISSED' : 'met'}`
  console.log(`  ${what.padEnd(64)} ${(value < 10 ? value.toFixed(2) : value.toFixed(0)).padStart(8)} ${unit}${verdict}`)
}

function driverOf<K>(folds: Folds<ReturnType<typeof intakeFold.start>, K>, { header, lines }: Recording) {
  const at = Date.parse(lines[0]?.at ?? '')
  return Driver.fresh(folds, { ...placeOf(lines), at, seq: 0, configs: [configOf(header)], rolling: false })
}

/** Plays a file through; the time that each of its lines (ten seconds of firing) took, and every hour a look at the driver. */
function playThrough<K>(
  folds: Folds<ReturnType<typeof intakeFold.start>, K>,
  recording: Recording,
  everyHour: (driver: Driver<ReturnType<typeof intakeFold.start>, K>, hour: number) => void,
): number[] {
  const driver = driverOf(folds, recording)
  const { kiln } = configOf(recording.header)
  const began = driver.state.at
  const took: number[] = []
  let seq = 0
  let hour = 0
  for (const line of recording.lines) {
    const at = Date.parse(line.at)
    const from = performance.now()
    driver.drive(entryOf(line, { seq: ++seq, at, kiln }))
    took.push(performance.now() - from)
    if (at - began < (hour + 1) * 3600000) continue
    hour++
    everyHour(driver, hour)
  }
  return took
}

function timed<R>(run: () => R): { result: R; ms: number } {
  const from = workedMs()
  return { result: run(), ms: workedMs() - from }
}

/** Mean over hours three to eight, when every kiln burns. */
const burningMs = (took: readonly number[]): number => sum(took.slice(3 * 360, 8 * 360)) / (5 * 360)

const sum = (a: readonly number[]): number => a.reduce((all, one) => all + one, 0)
const at = (a: readonly number[], share: number): number =>
  [...a].sort((x, y) => x - y)[Math.min(a.length - 1, Math.floor(share * a.length))] ?? NaN

const folds = { intake: intakeFold, kiln: kilnFold }
const bare = { intake: intakeFold, kiln: makeKilnFold(null) }
const burningHour = 6
const gapHours = [1, 8, 14]

for (const { kind, recording } of firings()) {
  console.log(`${kind}: ${hours} h at 10 s, ${recording.lines.length} lines, ms ${countsThread ? 'of this thread' : 'by the clock'}`)
  const without = timed(() => playThrough(bare, recording, () => {}))
  let state = 0
  let checkpoint = 0
  let intake = 0
  let frozen: ReturnType<typeof freezeSite> | null = null
  const whole = timed(() => playThrough(folds, recording, () => {}))
  // the work is the same each time: the lesser of two is what the line takes, the rest is the machine's
  const before = whole.result
  const again = playThrough(folds, recording, (driver, hour) => {
    const site = freezeSite(folds, driver.state)
    checkpoint = Math.max(checkpoint, site.bytes.length)
    intake = Math.max(intake, intakeFold.freeze(driver.state.intake).length)
    for (const session of driver.state.sessions.values()) state = Math.max(state, kilnFold.freeze(session.state).length)
    if (hour === burningHour) frozen = site
  })
  const took = again.map((ms, i) => Math.min(ms, before[i] ?? ms))
  tell('replay with the estimator, reading of the file left out', whole.ms / 1000, 's', 5)
  tell('the bare driver without it', without.ms / 1000, 's')
  tell('a step of 10 s of firing, half of them within', at(took, 0.5), 'ms', 0.5)
  tell('99 of 100 within', at(took, 0.99), 'ms')
  tell('the longest hold of the loop', at(took, 1), 'ms', 10)
  tell('the estimator in a step of 10 s of burning', burningMs(took) - sum(without.result) / without.result.length, 'ms', 0.5)
  tell('state of a firing, frozen, at its largest', state / 1024, 'kB', 256)
  tell('checkpoint of the site, at its largest', checkpoint / 1024, 'kB')
  tell('the intake in it', intake / 1024, 'kB')
  if (frozen === null) throw new Error('the firing is too short')
  forecasts(frozen)
  for (const gap of gapHours) {
    const from = workedMs()
    const driver = thawSite(folds, [frozen])
    if (driver === null) throw new Error('the checkpoint is not read')
    driver.advance(driver.state.at + gap * 3600000)
    tell(`back after a kill and ${gap} h without power, from the checkpoint`, (workedMs() - from) / 1000, 's', 3)
  }
}
process.exitCode = missed === 0 ? 0 : 1

/** One full set of forecasts of the members, and its longest slice. */
function forecasts(frozen: ReturnType<typeof freezeSite>): void {
  const driver = thawSite(folds, [frozen])
  const model = [...(driver?.state.sessions.values() ?? [])][0]?.state.model?.ensemble
  if (!model) throw new Error('no estimator in the checkpoint')
  const { run, members, weights, history } = model
  const scratch = new Float64Array(benchLength)
  startRunOn(run, members, weights, history.length, 500, 40)
  const drive = { fireC: 0, ambientC: model.airC, outletC: 0, hours: 0, air: 1, seconds: beatS }
  const slices: number[] = []
  for (let point = 0; point < points; point++) {
    const from = performance.now()
    runPoint(run, model.config.worth, drive, scratch)
    slices.push(performance.now() - from)
  }
  tell('one full set of forecasts', sum(slices), 'ms', 350)
  tell('its longest slice', at(slices, 1), 'ms', 10)
}
