import { actText } from '../../web/src/lib/acts/act-text.ts'
import { logOf } from '../../web/src/lib/acts/log.ts'
import { tellable } from '../../web/src/lib/words/sentence.ts'
import type { ActionName } from '../contract/actions.ts'
import type { KilnConfig, Ms, Reason } from '../contract/fold.ts'
import { after, clock } from './clock.ts'
import { alarmSpans } from './alarm-spans.ts'
import type { AlarmSpan } from './alarm-spans.ts'
import type { Gathered } from './gather.ts'
import { summaryOf } from './summary.ts'
import type { Speech } from './words/speech.ts'

interface Line {
  at: Ms
  /** What is done all day long: several between two other lines are told as one. */
  routine: boolean
  /** A phase or a call: what is done all day long is not told across it. */
  turn?: true
  text: string
}

const routine: readonly ActionName[] = [
  'refuel',
  'wet-condenser',
  'observe',
  'reading',
  'weather',
  'arm',
  'acknowledge',
  'shelve',
  'unshelve',
]
const minMs = 60_000
const fiveMinMs = 300_000

/** The whole account, line by line: what happened in order of time, then the summary. */
export function accountOf(gathered: Gathered, config: KilnConfig, speech: Speech): string[] {
  const lines = [...toldLines(gathered, speech), ...actLines(gathered, speech), ...forecastLines(gathered, speech)]
  return [
    config.name,
    speech.own.times,
    '',
    ...folded(
      lines.sort((a, b) => a.at - b.at),
      speech,
    ),
    '',
    ...summaryOf(gathered, config, speech),
  ]
}

function because(reasons: readonly Reason[], { page, measures }: Speech): string {
  const told = tellable(reasons, page, measures)
  return told.length === 0 ? '' : `. ${told.join('; ')}`
}

function toldLines({ outputs, endAt }: Gathered, speech: Speech): Line[] {
  const { own, page } = speech
  const givenWithACall = (at: Ms, reasons: string): boolean =>
    outputs.some(
      (one) => one.kind === 'call' && one.state === 'due' && Math.abs(one.at - at) <= minMs && because(one.because, speech) === reasons,
    )
  const lines = outputs.flatMap((output): Line[] => {
    const { at } = output
    switch (output.kind) {
      case 'phase': {
        const why = because(output.because, speech)
        return [{ at, routine: false, turn: true, text: `${own.phase(page.phases[output.phase])}${givenWithACall(at, why) ? '' : why}` }]
      }
      case 'call': {
        if (output.state === 'done') return []
        const what = page.calls[output.call]
        const caution = own.cautions[output.call]
        const said = output.state === 'due' ? own.call(caution === undefined ? what : `${what} (${caution})`) : own.takenBack(what)
        return [{ at, routine: false, turn: true, text: `${said}${because(output.because, speech)}` }]
      }
      default:
        return []
    }
  })
  return [...lines, ...alarmSpans(outputs).map((span) => ({ at: span.from, routine: false, text: alarmText(span, endAt, speech) }))]
}

function alarmText({ alarm, channel, priority, times, from, to, seenAt, because: why }: AlarmSpan, endAt: Ms, speech: Speech): string {
  const { own, page } = speech
  const where = channel === undefined ? '' : ` (${channel})`
  const parts = [
    ...(times > 1 ? [own.often(times)] : []),
    to === null ? own.untilEnd : own.until(after(from, Math.min(to, endAt))),
    ...(seenAt === null ? [] : [own.seen(after(from, seenAt))]),
  ]
  return `${page.priorities[priority]}: ${page.alarms[alarm].name}${where}, ${parts.join(', ')}${because(why, speech)}`
}

function actLines({ acts }: Gathered, { own, page, measures }: Speech): Line[] {
  return logOf(acts).flatMap(({ act, first, corrected, takenBack }) => {
    const shown = takenBack ? first : act
    // glasses stand together in the summary: there they can be compared
    if (shown.act.action === 'glass' && !takenBack) return []
    const mark = takenBack ? ` ${own.withdrawn}` : corrected ? ` ${own.putRight}` : ''
    const what = `${actText(shown.act, page, measures)}${mark}`
    const often = routine.includes(shown.act.action)
    return [{ at: shown.doneAt, routine: often, text: often ? what : own.act(what) }]
  })
}

/** One line for each change of phase, to the next five minutes outwards. */
function forecastLines({ forecasts }: Gathered, { own, page }: Speech): Line[] {
  const moments = new Map<Ms, string[]>()
  for (const { at, call, earliest, latest } of forecasts) {
    const from = Math.floor(earliest / fiveMinMs) * fiveMinMs
    const to = Math.ceil(latest / fiveMinMs) * fiveMinMs
    moments.set(at, [...(moments.get(at) ?? []), own.between(page.calls[call], after(at, from), after(from, to))])
  }
  return [...moments].map(([at, parts]) => ({ at, routine: false, text: `  ${own.forecast(parts.join('; '))}` }))
}

function folded(lines: readonly Line[], { own }: Speech): string[] {
  const out: string[] = []
  let same: Line[] = []
  let between: Line[] = []
  const shown = ({ at, text }: Line): string => `${clock(at)}  ${text}`
  const flush = (): void => {
    const [first, last] = [same[0], same.at(-1)]
    const all = first && last ? [...between, { at: first.at, routine: true, text: routineText(first, last) }] : between
    out.push(...all.sort((a, b) => a.at - b.at).map(shown))
    same = []
    between = []
  }
  const routineText = (first: Line, last: Line): string => {
    const counts = new Map<string, number>()
    for (const { text } of same) counts.set(text, (counts.get(text) ?? 0) + 1)
    const told = [...counts].map(([text, times]) => (times > 1 ? `${text} (${own.often(times)})` : text)).join('; ')
    return `${own.act(told)}${same.length > 1 ? `, ${own.until(after(first.at, last.at))}` : ''}`
  }
  for (const line of lines) {
    if (line.routine) same.push(line)
    else if (line.turn) {
      flush()
      out.push(shown(line))
    } else between.push(line)
  }
  flush()
  return out
}
