import type { Ms } from '../../../../server/contract/fold.ts'
import { phases } from '../../../../server/contract/vocabulary.ts'
import type { Words } from '../../words/en.ts'
import type { ShelfWords } from '../../words/shelf/en.ts'
import type { Measures } from '../../lib/words/measures.ts'
import { capital } from '../../lib/words/sentence.ts'
import { spanText } from '../../lib/words/spans.ts'
import { alarmLines, blindSpans, callLines, litAtOf, topOf } from './account.ts'
import { resultOf } from './result.ts'
import type { Whole } from './whole.ts'

export interface DifferenceRow {
  name: string
  cells: { value: string; /** From the first firing; empty for it and where one of both is missing. */ difference: string }[]
}

type Amount = number | null
interface Measure {
  name: string
  of: (whole: Whole) => Amount
  text: (amount: number) => string
  /** How a difference is written where it is not written as the amount itself: a temperature has an offset, a difference none. */
  apart?: (amount: number) => string
}

/** What was measured of each firing in rows, with differences from the first. */
export function differenceRows(all: readonly Whole[], shelf: ShelfWords, words: Words, measures: Measures): DifferenceRow[] {
  const { rows } = shelf.compared
  const span = (ms: number): string => spanText(ms, words)
  const degrees = { text: (c: number) => measures.temperature(c), apart: (k: number) => measures.kelvins(k) }
  const percent = (value: number): string => `${measures.number(value, 1)} %`
  const after =
    (call: 'start-collecting' | 'stop-collecting' | 'seal') =>
    ({ firing }: Whole): Amount => {
      const at: Ms | null = callLines(firing.outputs, firing.acts).find((line) => line.call === call)?.doneAt ?? null
      return at === null ? null : at - litAtOf(firing)
    }
  const result = new Map(
    all.map((whole) => [
      whole,
      resultOf(
        whole.firing,
        whole.curve,
        whole.weighed.map((one) => one.document),
      ),
    ]),
  )
  const list: Measure[] = [
    { name: rows.charge, of: (one) => result.get(one)?.massKg ?? null, text: (kg) => measures.kilograms(kg) },
    { name: rows.moisture, of: (one) => result.get(one)?.moisturePct ?? null, text: percent },
    { name: rows.start, of: after('start-collecting'), text: span },
    { name: rows.stop, of: after('stop-collecting'), text: span },
    { name: rows.seal, of: after('seal'), text: span },
    ...phases
      .filter((phase) => phase !== 'idle')
      .map((phase) => ({
        name: words.phases[phase],
        of: ({ firing, curve }: Whole): Amount => {
          const spans = firing.phases.filter((one) => one.phase === phase)
          const end = firing.endedAt ?? curve.to
          return spans.length === 0 ? null : spans.reduce((sum, one) => sum + (one.to ?? end) - one.from, 0)
        },
        text: span,
      })),
    { name: rows.smokeTop, of: ({ curve }) => topOf(curve, 'smoke', 'smoke-estimated'), ...degrees },
    { name: rows.wallTop, of: ({ curve }) => topOf(curve, 'wall'), ...degrees },
    { name: rows.crude, of: (one) => result.get(one)?.crudeL ?? null, text: (litres) => measures.litres(litres) },
    { name: rows.charcoal, of: (one) => result.get(one)?.charcoalKg ?? null, text: (kg) => measures.kilograms(kg) },
    { name: rows.dryYield, of: (one) => result.get(one)?.charcoalPct?.dry ?? null, text: percent },
    { name: rows.alarms, of: ({ firing }) => alarmLines(firing.outputs).length, text: String },
    { name: rows.blind, of: ({ curve }) => blindSpans(curve).reduce((sum, one) => sum + one.to - one.from, 0), text: span },
  ]
  const date = { name: capital(rows.date), cells: all.map(({ firing }) => ({ value: measures.fullDate(litAtOf(firing)), difference: '' })) }
  return [date, ...list.flatMap((measure) => rowOf(measure, all, shelf))]
}

function rowOf({ name, of, text, apart = text }: Measure, all: readonly Whole[], { compared }: ShelfWords): DifferenceRow[] {
  const amounts = all.map(of)
  if (amounts.every((amount) => amount === null)) return []
  const first = amounts[0] ?? null
  const cells = amounts.map((amount, index) => {
    if (amount === null) return { value: compared.none, difference: '' }
    if (index === 0 || first === null) return { value: text(amount), difference: '' }
    const by = apart(Math.abs(amount - first))
    if (by === apart(0)) return { value: text(amount), difference: compared.same }
    return { value: text(amount), difference: amount > first ? compared.more(by) : compared.less(by) }
  })
  return [{ name: capital(name), cells }]
}
