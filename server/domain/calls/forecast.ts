import type { Ms } from '../../contract/fold.ts'
import type { TimeRange } from '../../contract/live.ts'
import type { Call } from '../../contract/vocabulary.ts'
import { mean, slope } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import { chargeMass } from './heat.ts'
import type { CallStates } from './state.ts'
import type { Window } from './window.ts'

const minuteMs = 60_000
/** A small fire's firebox over the outlet, K, until there is half an hour of its own. Common practice, no source. */
const usualFireK = 550

/** Heat in per mass, K·h/kg, at which simulated firings were best started and stopped: tenth, middle and ninth of ten. */
const startHeat = { early: 8, likely: 13, late: 21 }
const stopHeat = { early: 32, likely: 45, late: 72 }
/** Elapsed time at the stop over that at a wall of 160 °C, likewise. */
const stopOver160 = { early: 1.15, likely: 1.6, late: 2.6 }
/** Elapsed time at the seal over that at the stop, likewise. */
const sealOverStop = { early: 1.36, likely: 1.5, late: 1.75 }

/** The next turns by simple continuation of what is measured; meant to hold the truth four times out of five. */
export function forecastCalls(look: Look, window: Window, calls: CallStates): Partial<Record<Call, TimeRange>> {
  const lit = look.litAt
  if (lit === null || look.facts.sealedAt !== null) return {}
  const ranges: Partial<Record<Call, TimeRange>> = {}
  if (calls['start-collecting'].state === 'not-yet') ranges['start-collecting'] = byHeat(look, window, startHeat)
  const stop = stopRange(look, window, lit)
  if (open(calls['stop-collecting'].state)) ranges['stop-collecting'] = stop
  if (open(calls.seal.state)) ranges.seal = sealRange(look, window, lit, stop)
  return ranges
}

const open = (state: CallStates['seal']['state']): boolean => state === 'not-yet' || state === 'withdrawn'

function byHeat(look: Look, window: Window, heat: typeof startHeat): TimeRange {
  const { wetKg } = chargeMass(look.config, look.facts.charge)
  const firebox = mean(look.past.firebox, 30)
  const outlet = mean(look.past.outlet, 30) ?? 40
  const settled = look.past.firebox.values.length >= 30 && firebox !== null && look.litAt !== null && look.at - look.litAt > 40 * minuteMs
  const perMin = Math.max(100, settled ? firebox - outlet : usualFireK) / 60 / wetKg
  const dose = window.heat.sumKh / wetKg
  const until = (level: number): Ms => look.at + (Math.max(0, level - dose) / perMin) * minuteMs
  // past its likely level the rest of the range is what is left of it
  const late = Math.max(heat.late, dose * 1.2)
  return { earliest: until(heat.early), likely: until(Math.max(heat.likely, Math.min(late, dose * 1.08))), latest: until(late) }
}

function stopRange(look: Look, window: Window, lit: Ms): TimeRange {
  const smoke = mean(look.past.smoke, 10)
  if (smoke !== null && smoke > 95) return bySmoke(look, smoke, look.config.limits.smokeStopC - 15, 25)
  const heat = byHeat(look, window, stopHeat)
  const { wall160At } = window.heat
  if (wall160At === null) return heat
  const share = (over: number): Ms => lit + over * (wall160At - lit)
  const middle = (a: Ms, b: Ms): Ms => Math.max(look.at, (a + b) / 2)
  return {
    earliest: middle(heat.earliest, share(stopOver160.early)),
    likely: middle(heat.likely, share(stopOver160.likely)),
    latest: Math.max(middle(heat.latest, share(stopOver160.late)), look.at + 30 * minuteMs),
  }
}

function sealRange(look: Look, window: Window, lit: Ms, stop: TimeRange): TimeRange {
  const smoke = mean(look.past.smoke, 10)
  if (smoke !== null && smoke > 170) return bySmoke(look, smoke, 280, 20)
  const { shutAt } = window
  const from = shutAt === null ? stop : { earliest: shutAt, likely: shutAt + (shutAt - lit) * 0.12, latest: shutAt + (shutAt - lit) * 0.5 }
  const share = (t: Ms, over: number): Ms => Math.max(look.at, lit + over * (t - lit))
  return {
    earliest: share(from.earliest, sealOverStop.early),
    likely: share(from.likely, sealOverStop.likely),
    latest: share(from.latest, sealOverStop.late),
  }
}

function bySmoke(look: Look, smoke: number, target: number, leastRate: number): TimeRange {
  const rate = Math.max(leastRate, slope(look.past.smoke, 60) ?? leastRate)
  const minutes = (Math.max(0, target - smoke) / rate) * 60
  return {
    earliest: look.at + minutes * 0.45 * minuteMs,
    likely: look.at + minutes * minuteMs,
    latest: look.at + (minutes * 2 + 25) * minuteMs,
  }
}
