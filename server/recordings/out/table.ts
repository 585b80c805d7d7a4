import type { Act, Action } from '../../contract/actions.ts'
import type { Ms, Output } from '../../contract/fold.ts'
import type { PhaseSpan } from '../../contract/live.ts'
import { roles } from '../../contract/vocabulary.ts'
import type { Role } from '../../contract/vocabulary.ts'
import type { CurveSeries, Store } from '../../storage/store.ts'
import { harmless, rowText } from '../csv/rows.ts'

export const tablePresets = ['plain', 'local'] as const
export type TablePreset = (typeof tablePresets)[number]

/**
 * `plain`: RFC 4180, UTC times of ISO 8601, decimal points. `local`: for a spreadsheet that expects semicolons and decimal commas,
 * times of the place without a zone, a byte order mark so that it is read as UTF-8.
 */
interface Manner {
  separator: string
  mark: string
  time(at: Ms): string
  number(value: number): string
}

export function mannerOf(preset: TablePreset, offsetMin: number): Manner {
  const number = (value: number): string => String(Math.round(value * 1000) / 1000)
  if (preset === 'plain') return { separator: ',', mark: '', time: (at) => new Date(at).toISOString(), number }
  return {
    separator: ';',
    mark: '\ufeff',
    time: (at) => new Date(at + offsetMin * 60_000).toISOString().slice(0, 19).replace('T', ' '),
    number: (value) => number(value).replace('.', ','),
  }
}

type Column = Role | 'smoke-estimated'
const columns: readonly Column[] = [...roles, 'smoke-estimated']
const unitOf = (column: Column): string => (column === 'bottle' ? 'kg' : column === 'co' ? 'ppm' : 'C')

export const tableHeader = ['time', ...columns.map((column) => `${column} ${unitOf(column)}`), 'phase', 'what', 'words']

export interface TableFiring {
  id: string
  from: Ms
  to: Ms
  phases: readonly PhaseSpan[]
  acts: readonly Act[]
  outputs: readonly Output[]
}

const windowMs = 3_600_000
/** Fine enough that every reading is a point of its own. */
const pointsAnHour = 2 * windowMs

/** Every reading and every event in order of time, an hour at once; readings that came together share a row. Yields text. */
export async function* tableOf(store: Store, firing: TableFiring, manner: Manner): AsyncGenerator<string> {
  yield manner.mark + rowText(tableHeader, manner.separator)
  const events = eventsOf(firing)
  const first = Math.min(firing.from, events[0]?.at ?? firing.from)
  const last = Math.max(firing.to, events.at(-1)?.at ?? firing.to)
  for (let from = first; from <= last; from += windowMs) {
    const to = Math.min(last, from + windowMs - 1)
    const lines = await store.curve(firing.id, from, to, pointsAnHour)
    const rows = [...readingRows(lines, firing.phases, manner), ...eventRows(events, from, to, firing.phases, manner)]
    const text = rows.sort((a, b) => a.at - b.at).map(({ cells }) => rowText(cells, manner.separator))
    if (text.length > 0) yield text.join('')
  }
}

interface TimedRow {
  at: Ms
  cells: string[]
}

function readingRows(lines: readonly CurveSeries[], phases: readonly PhaseSpan[], manner: Manner): TimedRow[] {
  const byTime = new Map<Ms, Map<Column, number>>()
  for (const { role, t, value } of lines) {
    t.forEach((at, index) => {
      const one = value[index] ?? null
      if (one === null) return
      const row = byTime.get(at) ?? new Map<Column, number>()
      byTime.set(at, row.set(role, one))
    })
  }
  return [...byTime].map(([at, values]) => ({
    at,
    cells: [
      manner.time(at),
      ...columns.map((column) => {
        const value = values.get(column)
        return value === undefined ? '' : manner.number(value)
      }),
      phaseAt(phases, at),
      '',
      '',
    ],
  }))
}

interface Event {
  at: Ms
  what: string
  words: string
}

function eventRows(events: readonly Event[], from: Ms, to: Ms, phases: readonly PhaseSpan[], manner: Manner): TimedRow[] {
  return events
    .filter((event) => event.at >= from && event.at <= to)
    .map(({ at, what, words }) => ({
      at,
      cells: [manner.time(at), ...columns.map(() => ''), phaseAt(phases, at), what, harmless(words)],
    }))
}

function eventsOf({ acts, outputs }: TableFiring): Event[] {
  const events: Event[] = acts.map(({ doneAt, act, corrects }) => ({
    at: doneAt,
    what: `${corrects === undefined ? 'act' : 'correction'} ${act.action}`,
    words: detailsOf(act),
  }))
  for (const output of outputs) {
    if (output.kind === 'call') events.push({ at: output.at, what: `call ${output.call}`, words: output.state })
    if (output.kind === 'alarm') events.push({ at: output.at, what: `alarm ${output.alarm}`, words: output.state })
  }
  return events.sort((a, b) => a.at - b.at)
}

function detailsOf({ action: _, ...rest }: Action): string {
  if ('text' in rest) return rest.text
  return Object.entries(rest)
    .map(([name, value]) => `${name} ${String(value)}`)
    .join(' ')
}

function phaseAt(phases: readonly PhaseSpan[], at: Ms): string {
  return phases.findLast((span) => span.from <= at)?.phase ?? ''
}
