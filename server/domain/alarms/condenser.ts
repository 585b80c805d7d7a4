import type { Reason } from '../../contract/fold.ts'
import { avoidableShare, pressureKPa } from '../condenser/loss.ts'
import { dryLimitC, isFarOver, isForgotten, isWithinHabit, usualTopK } from '../condenser/watch.ts'
import { mean } from '../firing/history.ts'
import { above } from './limit.ts'
import type { Scene, Tell } from './scene.ts'

/** Over this, nearly everything goes through (instrument facts 8.3), whatever wet cloths reach. */
const hotOverWetK = 28
/** After the stop it is mostly tar that gets away. Common practice, no source. */
const hotAfterStopK = 36
/** So much over the tops that this operator usually lets happen is no cycle any more. Common practice, no source. */
const hotOverUsual = 1.4
/** Water takes so long to be felt all along the pipe. From trials, no source. */
const answerMs = 5 * 60_000
/** A sound that was not heard for so long may be heard now. Common practice, no source. */
const unansweredMs = 20 * 60_000
const surelyDryMin = 10
/** Limit of the hot alarm: the kiln's own, lifted where even wet cloths, or the usual cycle, do not get there. */
export function hotLimitC(scene: Scene): number {
  const { condenserWarningC } = scene.look.config.limits
  const { wetC } = scene.condenser
  // before the first cycle the load is unknown: then only what no cloth can hold is hot
  if (wetC === null) return condenserWarningC + 20
  const overK = scene.calls['stop-collecting'].state === 'not-yet' ? hotOverWetK : hotAfterStopK
  return Math.max(condenserWarningC, wetC + overK, wetC + hotOverUsual * (usualTopK(scene.condenser) ?? 0))
}

/** What the warmth costs beyond what wet cloths would lose, as shares and litres an hour. */
export function costs(scene: Scene, outletC: number): Reason[] {
  const wet = scene.condenser.wetC ?? scene.look.config.limits.condenserNoticeC - 5
  const { low, high } = avoidableShare(outletC, wet, pressureKPa(scene.look.config.altitudeM))
  return [
    { code: 'vapour-lost-least', value: low },
    { code: 'vapour-lost-most', value: high },
    { code: 'litres-lost-least', value: low * scene.flowLPerH.low },
    { code: 'litres-lost-most', value: high * scene.flowLPerH.high },
  ]
}

/** Every good sample of the outlet. */
export function judgeOutlet(scene: Scene, outletC: number, tell: Tell): void {
  const { condenserDeadBandK, condenserOnDelayS, condenserOffDelayS } = scene.look.config.limits
  const hot = hotLimitC(scene)
  const judged = scene.condenser.wettedAt !== null ? above(outletC, hot, condenserDeadBandK) : 'unknown'
  tell({
    alarm: 'condenser-hot',
    channel: null,
    sign: answered(scene, 'condenser-hot') ? 'normal' : judged === 'abnormal' && waits(scene, 'condenser-hot') ? 'between' : judged,
    again: didNotHelp(scene, 'condenser-hot') || isUnanswered(scene, 'condenser-hot'),
    because: [{ code: 'outlet-over', value: outletC, limit: hot }, ...costs(scene, outletC)],
    delays: { onS: condenserOnDelayS, offS: condenserOffDelayS },
    // one trouble, one alarm: the other says the same and asks for the same
    quiet: !worthCatching(scene) || isWithinHabit(scene.condenser, scene.look) || stands(scene, 'condenser-warm'),
  })
}

/** Every minute: cloths that stay dry for longer than this operator's cycle. */
export function judgeDry(scene: Scene, tell: Tell): void {
  const { condenser, look } = scene
  const limit = dryLimitC(condenser, look)
  const now = mean(look.past.outlet, 2)
  if (limit === null || now === null) return
  const dry = isForgotten(condenser, look) && !waits(scene, 'condenser-warm')
  tell({
    alarm: 'condenser-warm',
    channel: null,
    sign: answered(scene, 'condenser-warm') ? 'normal' : dry ? 'abnormal' : condenser.dryMin === 0 ? 'normal' : 'between',
    again: didNotHelp(scene, 'condenser-warm') || isUnanswered(scene, 'condenser-warm'),
    because: [{ code: 'outlet-over-wet', value: now, limit, forS: condenser.dryMin * 60 }, ...costs(scene, now)],
    // one trouble, one alarm: hot says all that warm would say
    quiet: hotSpeaks(scene) || !worthCatching(scene),
  })
}

/** A wetting that is seen in the outlet ends the spell that was told, however warm it stays: what dries after it is told anew. */
function answered({ board, condenser, look }: Scene, alarm: 'condenser-warm' | 'condenser-hot'): boolean {
  const told = board.items[alarm]?.told ?? null
  const { seenWettedAt } = condenser
  return told !== null && seenWettedAt !== null && seenWettedAt > told && look.at - seenWettedAt < answerMs
}

/** Who wetted after the alarm, and in vain, hears it again. */
function didNotHelp({ board, condenser }: Scene, alarm: 'condenser-warm' | 'condenser-hot'): boolean {
  const told = board.items[alarm]?.told ?? null
  return told !== null && condenser.helped === false && condenser.checkedWettingAt !== null && condenser.checkedWettingAt > told
}

/** Nobody took note for so long, and the cloths are as dry as can be. */
function isUnanswered({ board, condenser, look }: Scene, alarm: 'condenser-warm' | 'condenser-hot'): boolean {
  const item = board.items[alarm]
  if (item?.state !== 'unacknowledged' || item.told === null) return false
  return look.at - item.told >= unansweredMs && condenser.dryness >= surelyDryMin
}

/** What comes before the start is thrown away anyhow. */
function worthCatching({ calls, phase }: Scene): boolean {
  return calls['start-collecting'].state !== 'not-yet' || phase === 'vinegar' || phase === 'tar' || phase === 'clearing'
}

/** What passes by itself within minutes raises nothing; what stands, stands until it has passed. */
function waits({ board, condenser }: Scene, alarm: 'condenser-warm' | 'condenser-hot'): boolean {
  return condenser.passing && !isFarOver(condenser) && board.items[alarm]?.on !== true
}

/** The alarm is on and may be heard: one that is itself kept quiet speaks for nobody. */
function stands({ board }: Scene, alarm: 'condenser-warm' | 'condenser-hot'): boolean {
  const item = board.items[alarm]
  return item?.on === true && item.state !== 'suppressed' && item.state !== 'out-of-service'
}

/** The hot alarm stands, or stood a moment ago and the outlet is on its way down. */
function hotSpeaks(scene: Scene): boolean {
  const hot = scene.board.items['condenser-hot']
  if (stands(scene, 'condenser-hot')) return true
  // one that was never told has said nothing
  return hot?.state === 'normal' && hot.told !== null && scene.look.at - hot.since < 600_000
}
