import { logOf } from '../../web/src/lib/acts/log.ts'
import { tellable } from '../../web/src/lib/words/sentence.ts'
import { refusalLines } from '../../web/src/views/setup/node-words.ts'
import type { ActionName } from '../contract/actions.ts'
import type { KilnConfig, Ms } from '../contract/fold.ts'
import { calls, priorities } from '../contract/vocabulary.ts'
import type { Call, HintCode } from '../contract/vocabulary.ts'
import { crudeKgPerL } from '../domain/yield/condensate.ts'
import { alarmSpans } from './alarm-spans.ts'
import { after, clock } from './clock.ts'
import type { Gathered } from './gather.ts'
import type { Speech } from './words/speech.ts'

/** What a maker asks of a firing that is over, one line each. */
export function summaryOf(gathered: Gathered, config: KilnConfig, speech: Speech): string[] {
  const { own, page, setup } = speech
  const { outputs, hints, readings, refused } = gathered
  const done = doneIn(gathered)
  const called = calledIn(gathered)
  const spans = alarmSpans(outputs)
  const byPriority = priorities.toReversed().flatMap((priority) => {
    const times = spans.filter((span) => span.priority === priority).reduce((sum, span) => sum + span.times, 0)
    return times === 0 ? [] : [`${page.priorities[priority]} ${String(times)}`]
  })
  const advised = [...hints].map(([hint, times]) => `${page.hints[hint as HintCode]} ${String(times)}`)
  const both = (call: Call, ...acts: ActionName[]): string =>
    `${moment(called(call), own.called, own.notCalled)}; ${moment(firstOf(acts.map(done)), own.done, own.notDone)}`
  const turnedAway = refusalLines(refused, setup)
  const rows: [string, string][] = [
    [own.lit, litText(gathered, done('light'), speech)],
    [own.collecting, collectingText(called, done, speech)],
    [own.sealing, both('seal', 'seal')],
    [own.opening, both('open', 'crack', 'open')],
    [own.liquid, liquidText(gathered, called, done, speech)],
    [page.acts.glass, glassesText(gathered, speech)],
    [own.alarms, byPriority.join(', ') || own.none],
    [own.hints, advised.join(', ') || own.none],
    [own.readings, `${speech.measures.number(readings)}; ${own.refused}: ${turnedAway.join(', ') || own.none}`],
    [own.unjudged, unjudged(gathered, config, called, speech).join('; ') || own.all],
  ]
  return [own.summary, ...rows.map(([name, text]) => `  ${name}: ${text}`), own.caution]
}

type At = (name: ActionName) => Ms | null
type CalledAt = (call: Call) => Ms | null

const moment = (at: Ms | null, say: (time: string) => string, otherwise: string): string => (at === null ? otherwise : say(clock(at)))
const firstOf = (times: (Ms | null)[]): Ms | null => times.find((time) => time !== null) ?? null

/** When it was first done, by the log as it now stands. */
function doneIn({ acts }: Gathered): At {
  const standing = logOf(acts).filter((line) => !line.takenBack)
  return (name) => standing.findLast(({ act }) => act.act.action === name)?.act.doneAt ?? null
}

/** The call that stood at the end; null where it was never given or taken back. */
function calledIn({ outputs }: Gathered): CalledAt {
  return (call) => {
    const last = outputs.findLast((output) => output.kind === 'call' && output.call === call && output.state !== 'done')
    return last?.kind === 'call' && last.state === 'due' ? last.at : null
  }
}

function litText({ outputs }: Gathered, logged: Ms | null, { own }: Speech): string {
  if (logged !== null) return own.done(clock(logged))
  const burning = outputs.find((output) => output.kind === 'phase' && output.phase !== 'idle')
  return burning ? own.inferred(clock(burning.at)) : own.notLit
}

function collectingText(called: CalledAt, done: At, { own }: Speech): string {
  const span = (from: Ms | null, to: Ms | null): string =>
    own.span(from === null ? '?' : clock(from), to === null ? '?' : from === null ? clock(to) : after(from, to))
  const window = (from: Ms | null, to: Ms | null, say: (times: string) => string, otherwise: string): string =>
    from === null && to === null ? otherwise : say(span(from, to))
  return [
    window(called('start-collecting'), called('stop-collecting'), own.called, own.notCalled),
    window(done('start-collecting'), done('stop-collecting'), own.done, own.notDone),
  ].join('; ')
}

function liquidText(gathered: Gathered, called: CalledAt, done: At, { own, measures }: Speech): string {
  const { acts, ran } = gathered
  const logged = done('start-collecting') !== null && done('stop-collecting') !== null
  const when = logged ? done : called
  const [from, to] = [when('start-collecting'), when('stop-collecting')]
  const at = (time: Ms): number | null => ran.findLast((one) => one.at <= time)?.kg ?? null
  const [before, behind] = [from === null ? null : at(from), to === null ? null : at(to)]
  const estimated = before === null || behind === null || behind <= before ? null : (behind - before) / crudeKgPerL
  const bottledL = logOf(acts).flatMap(({ act: { act }, takenBack }) =>
    act.action === 'swap-bottle' && !takenBack ? [act.litres ?? 0] : [],
  )
  const inBottles = bottledL.reduce((sum, litres) => sum + litres, 0)
  return [
    estimated === null ? own.notEstimated : own.liquidIn(measures.litres(estimated), logged ? own.asLogged : own.asCalled),
    ...(inBottles > 0 ? [own.bottles(measures.litres(inBottles))] : []),
  ].join('; ')
}

function glassesText({ acts }: Gathered, { own, page }: Speech): string {
  const glasses = logOf(acts).flatMap(({ act: { act, doneAt }, takenBack }) =>
    act.action === 'glass' && !takenBack ? [{ ...act, doneAt }] : [],
  )
  const [first, ...more] = glasses.sort((a, b) => a.doneAt - b.doneAt)
  if (first === undefined) return own.none
  const told = (time: string, { number, drip }: typeof first): string =>
    `${String(number)} ${time}${drip === undefined ? '' : ` ${page.dripLooks[drip]}`}`
  return [told(clock(first.doneAt), first), ...more.map((glass) => told(after(first.doneAt, glass.doneAt), glass))].join(', ')
}

function unjudged(
  { heard, gaps, acts, failures, untold }: Gathered,
  { charge, roles }: KilnConfig,
  called: CalledAt,
  speech: Speech,
): string[] {
  const { own, page, measures } = speech
  const named = new Set(Object.values(roles))
  for (const role of ['firebox', 'wall', 'smoke', 'outlet'] as const) named.add(role)
  const weighed = charge.massKg !== undefined || acts.some(({ act }) => act.action === 'load' && act.massKg !== undefined)
  const blind = [...new Set(gaps.map((gap) => gap.role))].map((role) => {
    const ofRole = gaps.filter((gap) => gap.role === role)
    return own.blind(page.roles[role], Math.round(ofRole.reduce((sum, gap) => sum + gap.to - gap.from, 0) / 60_000), ofRole.length)
  })
  const reasons = tellable(untold, page, measures)
  const why = reasons.length === 0 ? '' : ` (${reasons.join('; ')})`
  return [
    ...calls
      .filter((call) => call !== 'stop-feeding' && called(call) === null)
      .map((call) => own.noCall(page.calls[call]) + (call === 'open' ? why : '')),
    ...[...named].filter((role) => !heard.has(role)).map((role) => own.noProbe(page.roles[role])),
    ...blind,
    ...(weighed ? [] : [own.notWeighed]),
    ...(failures > 0 ? [own.failed(failures)] : []),
  ]
}
