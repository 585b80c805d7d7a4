import type { Ms, Reason } from '../../../../server/contract/fold.ts'
import type { ChannelView, Command, KilnView } from '../../../../server/contract/live.ts'
import type { DripLook, Role } from '../../../../server/contract/vocabulary.ts'
import type { Words } from '../../words/en.ts'
import { actText } from '../acts/act-text.ts'
import { lastOf, lastSeen, logOf } from '../acts/log.ts'
import { fireCameBack } from './came-back.ts'
import type { ReasonWords } from './shape.ts'
import type { Measures } from './measures.ts'
import { momentText, notBeforeText, sinceMs } from './spans.ts'

export interface Sentence {
  command: string
  until: string
  why: string
}

/** The probe of a role that says most: a fresh one before a late one. */
export function channelOf(kiln: KilnView, role: Role): ChannelView | undefined {
  const of = kiln.channels.filter((channel) => channel.role === role)
  return of.find((channel) => channel.heard === 'fresh' && channel.value !== null) ?? of[0]
}

/** The number that the standing call hangs on; it is drawn larger than the others. */
export function decidingRole(kiln: KilnView): Role {
  const command = kiln.command.do
  if (isUnloading(kiln)) return channelOf(kiln, 'core') ? 'core' : 'wall'
  if (command === 'none' || command === 'light' || command === 'relight') return 'firebox'
  if (command === 'keep-shut' || command === 'trial-opening') return channelOf(kiln, 'core') ? 'core' : 'wall'
  if (channelOf(kiln, 'smoke') || kiln.estimate) return 'smoke'
  return 'wall'
}

export function reasonText(reason: Reason, words: Words, measures: Measures): string {
  const role = reason.channel?.split('/').at(-1) ?? ''
  const where = (words.roles as Record<string, string>)[role] ?? role
  const tell = (words.reasons as Partial<Record<string, ReasonWords>>)[reason.code]
  // a code that this page does not know yet is shown as it is; a test keeps the lists together
  return tell ? tell(reason, measures, where) : reason.code.replaceAll('-', ' ')
}

export function sentencesOf(reasons: readonly Reason[], words: Words, measures: Measures, most = 2): string {
  return tellable(reasons, words, measures)
    .slice(0, most)
    .map((text) => `${text}.`)
    .join(' ')
}

/**
 * The reasons of an alarm hold the numbers of the moment when it came. The newest reading takes the place of the old one while it is
 * on the same side of the limit, so that a number is not told in two ways on one screen. Where it has come back, while the alarm waits to
 * be sure, that is told, and what was lost before is not; of carbon monoxide never, for a low number clears nothing (trade facts 7.1.2).
 *
 * @param of the probe or node that the alarm is about
 */
export function freshReasons(reasons: readonly Reason[], kiln: KilnView, of?: string): Reason[] {
  const fresh = reasons.map((reason) => {
    if (isHeardAgain(reason, kiln, of)) return { code: 'heard-again' }
    const [, role, side] = /^([a-z]+)-(over|under)(?:-wet)?$/.exec(reason.code) ?? []
    const value = role === undefined ? null : channelOf(kiln, role as Role)?.value
    if (value === null || value === undefined || reason.value === undefined) return reason
    const limit = reason.limit
    const holds = limit === undefined || (side === 'over' ? value >= limit : value <= limit)
    if (holds) return { ...reason, value }
    return role === 'co' ? reason : { code: 'back-inside', value }
  })
  const isBack = fresh.some(({ code }) => code === 'back-inside')
  return isBack ? fresh.filter(({ code }) => !/-lost-(least|most)$/.test(code)) : fresh
}

/** A node or probe whose readings stand fresh beside its alarm, which stays for a moment after they are back. */
function isHeardAgain({ code }: Reason, { channels }: KilnView, of: string | undefined): boolean {
  if (of === undefined || (code !== 'node-silent' && code !== 'silent-for')) return false
  return channels.some(({ channel, heard }) => heard === 'fresh' && (channel === of || channel.startsWith(`${of}/`)))
}

/** A range that comes as two reasons becomes one sentence. Litres say the same as the share of vapour, and are easier to see. */
export function tellable(reasons: readonly Reason[], words: Words, measures: Measures): string[] {
  return reasons.flatMap((reason) => {
    const range = /^(litres|vapour)-lost-(least|most)$/.exec(reason.code)
    if (!range) return [capital(reasonText(reason, words, measures))]
    if (reason.code !== 'litres-lost-least') return []
    const most = reasons.find((one) => one.code === 'litres-lost-most')?.value ?? 0
    return [words.ranges['litres-lost'](measures.litres(reason.value ?? 0).replace(/ .*$/, ''), measures.litres(most))]
  })
}

/** Only a slope that is known this well, K/h, may be called steady: while a sealed kiln cools, a few an hour are already much. */
const steadyWithin = { driven: 12, sealed: 3 }

/** Level and slope of the deciding probe, as far as it is known. */
export function trendText(channel: ChannelView | undefined, words: Words, measures: Measures, within = steadyWithin.driven): string {
  if (!channel || channel.value === null || channel.heard !== 'fresh' || channel.role === 'co' || channel.role === 'bottle') return ''
  const what = capital(words.shortRoles[channel.role])
  const value = measures.temperature(channel.value)
  const slope = channel.slopePerH
  if (slope === null) return `${what} ${value}.`
  // within two standard deviations of nothing, or less than a degree an hour, it stands still
  const unsure = 2 * (channel.slopeSd ?? 0)
  if (Math.abs(slope) < Math.max(1, unsure)) return unsure > within ? `${what} ${value}.` : `${words.trend.steady(what, value)}.`
  const rate = measures.kelvins(rounded(slope, channel.slopeSd ?? 0))
  return `${slope > 0 ? words.trend.climbing(what, value, rate) : words.trend.falling(what, value, rate)}.`
}

/** No finer than it is known: steps of one, five or ten K/h. */
function rounded(slope: number, sd: number): number {
  const step = sd <= 1 ? 1 : sd <= 4 ? 5 : 10
  return Math.sign(slope) * Math.max(step, Math.round(Math.abs(slope) / step) * step)
}

export function sentenceOf(kiln: KilnView, now: Ms, words: Words, measures: Measures): Sentence {
  const { command } = kiln
  // nothing is called any more, and the drum is not yet empty
  if (isUnloading(kiln)) return words.unloading
  if (looksLit(kiln)) return { ...words.looksLit, why: words.panel.warmDrum }
  // what the kiln is thought to hold by its settings is not loaded yet
  if (command.do === 'none') return { command: words.commands.none, until: words.untils.none, why: words.caution.co }
  const role = decidingRole(kiln)
  if (command.do === 'light')
    return { command: words.commands.light, until: words.untils.light, why: `${chargeText(kiln, words, measures)} ${words.caution.burns}` }
  const trend =
    trendText(channelOf(kiln, role), words, measures, isSealed(kiln.firing) ? steadyWithin.sealed : steadyWithin.driven) ||
    estimateText(kiln, words, measures)
  const because = sentencesOf(
    reasonsNow(kiln, now).filter((reason) => trend === '' || !trendSays(reason, role)),
    words,
    measures,
  )
  return {
    command: command.do === 'trial-opening' && watchedUntil(kiln) !== null ? words.gapCommand : words.commands[command.do],
    until: untilText(kiln, now, words, measures),
    why: [trend, because || waitText(kiln, now, words) || makeupText(kiln, words, measures)].filter((part) => part !== '').join(' '),
  }
}

/** Reasons for what stands: of waiting only a call that was taken back; that something was logged is no reason that helps anybody. */
function reasonsNow({ command, calls, estimate, firing }: KilnView, now: Ms): Reason[] {
  const back = calls.find(({ call, state }) => call === 'start-collecting' && state === 'withdrawn')
  const told = command.do === 'wait' && back ? back.because : command.because
  const reasons = told.map((reason): Reason => {
    // the service judges it every ten minutes, the corner of the screen tells it every minute
    if (reason.code === 'sealed-for' && firing.sealedAt !== null) return { ...reason, value: sinceMs(firing.sealedAt, now) / 3_600_000 }
    // the number of the moment when the call came may be hours old
    const share = reason.code === 'acid-share' ? estimate?.acidShare : reason.code === 'tar-share' ? estimate?.tarShare : undefined
    if (share !== undefined && estimate?.from === 'ensemble') return { ...reason, value: share }
    // a glass that was seen since says more than the one that made the call
    const drip = command.do === 'start-collecting' && reason.code.startsWith('seen-drip-') ? dripSeen(firing) : undefined
    return drip === undefined ? asideOfLimit(reason) : { ...reason, code: `seen-drip-${drip}` }
  })
  return reasons.filter(
    ({ code, value = 0, limit = Infinity }) =>
      // what speaks against opening no longer does once the wait is over
      !(command.do === 'keep-shut' && code === 'sealed-for' && value >= limit) &&
      !code.startsWith('logged') &&
      !(command.do === 'wait' && !back && (isOfPhase(code) || code.startsWith('seen-'))),
  )
}

/** "May be 45; must be below 45" tells nobody whether it is: whole degrees are rounded away from the limit. */
function asideOfLimit(reason: Reason): Reason {
  const { code, value, limit } = reason
  if ((code !== 'hottest-below' && code !== 'model-hottest') || value === undefined || limit === undefined) return reason
  return { ...reason, value: value < limit ? Math.floor(value) : Math.ceil(value) }
}

/** Why a phase began, perhaps an hour ago. */
function isOfPhase(code: string): boolean {
  return /^(smoke|wall|firebox|outlet|heat|vapour|signs|time)-/.test(code)
}

/** A reason holds the number of the moment when the call came; the newest number and its slope take its place. */
function trendSays({ code }: Reason, role: Role): boolean {
  return new RegExp(`^${role}-(over|under|now|climbs|falls|falling)`).test(code)
}

/** How long something seen stands for what is there now. Common practice, no source. */
export const seenForMs = 2_700_000

function dripSeen(firing: KilnView['firing']): DripLook | undefined {
  const seen = lastSeen(firing, 'drip')
  return seen?.act.action === 'observe' || seen?.act.action === 'glass' ? seen.act.drip : undefined
}

/** A dark drip before anything can be charred: what an earlier firing left in the pipe (common practice, no source). */
function darkTooEarly({ firing }: KilnView, now: Ms): boolean {
  if (firing.phase !== 'kindling' && firing.phase !== 'drying') return false
  const seen = lastSeen(firing, 'drip')
  const drip = dripSeen(firing)
  return seen !== undefined && now - seen.doneAt < seenForMs && (drip === 'dark' || drip === 'black')
}

function waitText(kiln: KilnView, now: Ms, words: Words): string {
  const { command, firing } = kiln
  if (command.do !== 'wait') return ''
  const { waits } = words
  if (darkTooEarly(kiln, now)) return `${waits.early}.`
  if (firing.phase === 'clearing') return `${waits.clearing}.`
  const { phase } = firing
  // a bottle that was taken away while nothing but steam can come makes no tar of it
  if (lastOf(firing, 'stop-collecting') && phase !== 'kindling') return `${waits.stopped}.`
  return phase === 'kindling' || phase === 'drying' || phase === 'breakdown' ? `${waits[phase]}.` : ''
}

/** Before lighting: what is known of the charge. */
function chargeText({ firing: { charge } }: KilnView, words: Words, measures: Measures): string {
  if (charge.massKg === undefined && charge.moisturePct === undefined) return words.caution.co
  return `${capital(actText({ action: 'load', ...charge }, words, measures))}.`
}

/** The estimated smoke, where no probe gives it. */
function estimateText({ estimate, firing }: KilnView, words: Words, measures: Measures): string {
  if (!estimate || isSealed(firing)) return ''
  return `${words.about(capital(words.shortRoles.smoke), measures.temperature(estimate.smokeC))}.`
}

/**
 * What the drip holds, while it is collected. What is dissolved is more than acids (some 5 % acetic, as much else, 80 to 90 % water: trade
 * facts 4.2), so the water is told.
 */
function makeupText({ estimate, firing }: KilnView, words: Words, measures: Measures): string {
  if (estimate?.from !== 'ensemble' || firing.collectingSince === null) return ''
  const waterShare = Math.max(0, 1 - estimate.tarShare - estimate.acidShare)
  const drip = words.makeup(measures.percent(waterShare), measures.percent(estimate.tarShare))
  const caughtL = caughtBeforeL(firing)
  return caughtL === null ? `${drip}.` : `${drip}. ${words.caught(measures.litres(caughtL))}.`
}

/** What was measured of the bottles before this one, L: a total that was estimated may shrink as more is learnt, this one never does. */
function caughtBeforeL(firing: KilnView['firing']): number | null {
  const measured = logOf(firing.acts).flatMap(({ act: { act }, takenBack }) =>
    !takenBack && act.action === 'swap-bottle' && act.litres !== undefined ? [act.litres] : [],
  )
  return measured.length === 0 ? null : measured.reduce((sum, litres) => sum + litres, 0)
}

const acts: Command[] = ['start-collecting', 'stop-collecting', 'stop-feeding', 'seal', 'trial-opening', 'relight']
/** A small gap is watched for half an hour before it stays open (trade facts 7.3). */
const gapWatchMs = 1_800_000

/** Until when the small gap of a trial opening is to be watched; null while none stands. */
export function watchedUntil({ firing }: Pick<KilnView, 'firing'>): Ms | null {
  const cracked = lastOf(firing, 'crack')?.doneAt ?? 0
  const closed = Math.max(lastOf(firing, 'reseal')?.doneAt ?? 0, firing.sealedAt ?? 0, lastOf(firing, 'open')?.doneAt ?? 0)
  return isSealed(firing) && cracked > closed ? cracked + gapWatchMs : null
}

const told: Role[] = ['firebox', 'wall', 'smoke', 'outlet', 'core']

/** A fire is lit or the kiln is closed, and no probe that tells anything of it is heard: every forecast is of what was. */
export function nothingHeard({ channels, firing }: Pick<KilnView, 'channels' | 'firing'>): boolean {
  return firing.phase !== 'idle' && !channels.some(({ role, heard }) => told.includes(role) && (heard === 'fresh' || heard === 'late'))
}

function untilText(kiln: KilnView, now: Ms, words: Words, measures: Measures): string {
  const { command } = kiln
  const gap = watchedUntil(kiln)
  if (gap !== null && gap > now) return words.gapUntil(measures.clock(gap))
  if (gap !== null && command.do === 'trial-opening') return words.gapOver
  if (nothingHeard(kiln) && !acts.includes(command.do))
    return isSealed(kiln.firing) ? words.nothingHeard.sealed : words.nothingHeard.burning
  if (command.notBefore !== null && command.notBefore > now && command.do === 'keep-shut')
    return words.notBefore(notBeforeText(command.notBefore, now, words, measures))
  if (command.do === 'keep-shut' && fireCameBack(kiln)) return words.closeAnew
  if (command.do === 'keep-shut' && kiln.hints.some(({ hint }) => hint === 'open-untold')) return words.untold
  // what is to be done at once stands before what comes after it
  if (command.next && !acts.includes(command.do) && command.next.call !== 'open' && command.next.range.latest > now) {
    const { from, to } = measures.range(Math.max(now, command.next.range.earliest), command.next.range.latest)
    const day = measures.sameDay(command.next.range.latest, now) ? to : momentText(command.next.range.latest, now, words, measures)
    return command.next.range.earliest <= now ? words.before[command.next.call](day) : words.until[command.next.call](from, day)
  }
  return words.untils[command.do]
}

/** Closed and not yet opened for good: cold pipes then say nothing about the charcoal. */
export function isSealed({ sealedAt, phase }: KilnView['firing']): boolean {
  return sealedAt !== null && (phase === 'cooling' || phase === 'cold')
}

/** It was opened after it had cooled, and the charcoal is still in it. */
export function isUnloading({ command, firing }: Pick<KilnView, 'command' | 'firing'>): boolean {
  return command.do === 'none' && isSealed(firing)
}

/** Hotter than any sun makes it, °C; the service takes it for lit by itself some minutes later. Common practice, no source. */
const litFromC = 150

/** Nothing is logged, and the firebox is hot. */
export function looksLit({ channels, firing }: Pick<KilnView, 'channels' | 'firing'>): boolean {
  if (firing.phase !== 'idle' || firing.litAt !== null) return false
  return channels.some(
    ({ role, heard, quality, value }) =>
      role === 'firebox' && heard === 'fresh' && quality === 'good' && value !== null && value >= litFromC,
  )
}

export function capital(text: string): string {
  return text.charAt(0).toLocaleUpperCase() + text.slice(1)
}

/** A problem code in words; one that this page does not know is shown as it is. */
export function problemText(code: string, words: Words): string {
  return (words.problems as Partial<Record<string, string>>)[code] ?? code.replaceAll('-', ' ')
}
