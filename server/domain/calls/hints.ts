import type { Ms, Reason } from '../../contract/fold.ts'
import type { HintView } from '../../contract/live.ts'
import type { HintCode, Phase } from '../../contract/vocabulary.ts'
import { dyingC } from '../alarms/fire.ts'
import type { FireWatch } from '../alarms/scene.ts'
import { minutesUntilDry, wetByC, type CondenserWatch } from '../condenser/watch.ts'
import { burnsOn, looksClosed } from '../cooling/closed.ts'
import type { Cooling } from '../cooling/state.ts'
import { untold } from '../cooling/untold.ts'
import { newest } from '../firing/facts.ts'
import { mean, slope } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import type { CallStates } from './state.ts'

export interface HintGround {
  look: Look
  phase: Phase
  calls: CallStates
  fire: FireWatch
  fireWanted: boolean
  condenser: CondenserWatch
}

const minuteMs = 60_000
const soonMin = 25
/** A glass of the drip every 20 minutes (the glass rack). */
const glassEveryMs = 20 * minuteMs

/** What needs the hands before it becomes an alarm. Once a minute. */
export function hintsOf(ground: HintGround): HintView[] {
  const hints: HintView[] = []
  const put = (hint: HintCode, by: Ms, because: Reason[]): void =>
    void hints.push({ hint, by: Math.round(by / minuteMs) * minuteMs, because })
  feed(ground, put)
  wet(ground, put)
  bottle(ground, put)
  look(ground, put)
  seal(ground, put)
  return hints.sort((a, b) => a.by - b.by)
}

type Put = (hint: HintCode, by: Ms, because: Reason[]) => void

function feed({ look, fire, fireWanted }: HintGround, put: Put): void {
  const now = mean(look.past.firebox, 2)
  const rate = slope(look.past.firebox, 8)
  if (!fireWanted || !fire.established || now === null || rate === null || rate > -60) return
  // nine tenths of its usual is where a fed fire turns up again
  const target = Math.max(dyingC(fire, look) + 40, 0.85 * (fire.usualC ?? 0))
  const minutes = Math.max(0, ((now - target) / -rate) * 60)
  if (minutes <= soonMin)
    put('feed-fire', look.at + minutes * minuteMs, [
      { code: 'firebox-falls', value: rate },
      { code: 'firebox-now', value: now, limit: target },
    ])
}

function wet({ look, phase, condenser }: HintGround, put: Put): void {
  if (phase === 'idle' || phase === 'kindling' || phase === 'failed' || phase === 'cooling' || phase === 'cold') return
  if (condenser.helped === false) return put('wet-cloths', look.at, [{ code: 'wetting-did-not-help' }])
  const minutes = minutesUntilDry(condenser, look)
  if (minutes !== null && minutes <= 15)
    put('wet-cloths', look.at + minutes * minuteMs, [
      { code: 'outlet-climbs', value: mean(look.past.outlet, 2) ?? 0, limit: wetByC(condenser) ?? 0 },
    ])
}

function bottle({ look, calls }: HintGround, put: Put): void {
  const stop = calls['stop-collecting']
  const collecting = calls['start-collecting'].state === 'due' || calls['start-collecting'].state === 'done'
  if (!collecting || stop.state === 'due' || stop.state === 'done' || stop.forecast === null) return
  const soon = stop.forecast.earliest - look.at < soonMin * minuteMs
  const last = look.facts.lastBottleAt
  if (soon && (last === null || look.at - last > 60 * minuteMs))
    put('fresh-bottle', Math.max(look.at, stop.forecast.earliest), [{ code: 'stop-may-come' }])
  // the rack is kept once its first glass stands
  const glass = look.facts.lastGlassAt
  if (glass !== null) put('take-glass', Math.max(look.at, glass + glassEveryMs), [{ code: 'glass-every', value: 20 }])
}

function look({ look, phase, calls, condenser }: HintGround, put: Put): void {
  const drip = newest(look.facts.drip)
  const smoke = newest(look.facts.smoke)
  const old = (seen: { at: Ms } | null): boolean => seen === null || look.at - seen.at > 30 * minuteMs
  const due = (at: Ms | undefined, aheadMin: number): boolean => at !== undefined && at - look.at < aheadMin * minuteMs
  const start = calls['start-collecting']
  const stop = calls['stop-collecting']
  if (condenser.vapourSince !== null && old(drip)) {
    if (start.state === 'not-yet' && due(start.forecast?.earliest, 10)) put('check-drip', look.at + 10 * minuteMs, [{ code: 'start-near' }])
    else if (start.state !== 'not-yet' && stop.state === 'not-yet' && due(stop.forecast?.earliest, 10))
      put('check-drip', look.at + 10 * minuteMs, [{ code: 'stop-near' }])
  }
  if ((phase === 'tar' || phase === 'clearing') && calls.seal.state === 'not-yet' && old(smoke) && due(calls.seal.forecast?.earliest, 10))
    put('check-smoke', look.at + 10 * minuteMs, [{ code: 'seal-near' }])
  const narrowed = look.facts.mouth === 'hole' || look.facts.mouth === 'half' || look.facts.mouth === 'closed'
  if (look.config.way === 'let-run' && look.facts.stoppedFeedingAt !== null && !narrowed && phase !== 'cooling' && phase !== 'cold')
    put('narrow-air', look.facts.stoppedFeedingAt + 15 * minuteMs, [{ code: 'runs-by-itself' }])
}

/** After the call to seal somebody is at the kiln with clay; then it is time to ask. Common practice, no source. */
const askSealMs = 15 * minuteMs

/** And again, where nobody feeds the fire any more: it may have been closed and forgotten in the book. Common practice, no source. */
const askAgainMs = 30 * minuteMs
/** A night is long: after six hours the hint stands and is not said again. */
const mostAsks = 12

/** The night's rules begin with the logged sealing: a kiln that was closed and not logged would stay without them. */
function seal({ look, calls, fire }: HintGround, put: Put): void {
  const waited = look.at - calls.seal.since
  if (calls.seal.state !== 'due' || waited < askSealMs) return
  const closed = looksClosed(look)
  const firebox = mean(look.past.firebox, 5)
  const isFed = closed === null && firebox !== null && firebox >= dyingC(fire, look)
  const times = isFed ? 0 : Math.min(mostAsks, Math.floor((waited - askSealMs) / askAgainMs))
  put('log-seal', calls.seal.since + askSealMs + times * askAgainMs, [closed ?? { code: 'seal-not-logged', value: waited / minuteMs }])
}

/** A kiln logged as sealed that burns on as before is asked about, every half hour: alarms of the night alone would send nobody to the book. */
export function sealedHints(look: Look, sealedAt: Ms, cooling: Cooling | null, open: CallStates['open']['state']): HintView[] {
  const because = burnsOn(look, sealedAt)
  if (because === null) return untoldHints(look, cooling, open)
  return [{ hint: 'check-seal', by: sealedAt + Math.floor((look.at - sealedAt) / askAgainMs) * askAgainMs, because: [because] }]
}

/** Said once a night: silence would be waited for in vain. */
function untoldHints(look: Look, cooling: Cooling | null, open: CallStates['open']['state']): HintView[] {
  const { crackedAt, openedAt, unloadedAt } = look.facts
  if (cooling === null || open !== 'not-yet' || crackedAt !== null || openedAt !== null || unloadedAt !== null) return []
  const because = untold(cooling, look)
  return because === null ? [] : [{ hint: 'open-untold', by: cooling.sealedAt, because }]
}
