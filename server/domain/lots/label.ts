import type { CondensateLot, DateText, Lot } from '../../contract/lots.ts'
import { currentCheck } from './ready.ts'
import { restOf } from './rest.ts'
import { smokeRange } from './smoke.ts'

export type LabelPicture =
  'not-a-drink' | 'gloves' | 'goggles' | 'away-from-water' | 'out-of-reach' | 'keeps-cool' | 'self-heats' | 'open-air'

/** What a printed label carries: what it is, when, how much, and what it can do to you. Never what it is good for. */
export interface Label {
  lot: string
  title: 'crude-condensate' | 'wood-vinegar' | 'charcoal'
  made: DateText | null
  amount: { value: number; unit: 'mL' | 'g' }
  wood: string[]
  smokeC: { low: number; high: number; estimated: boolean } | null
  rest: { days: number; drawFrom: DateText } | null
  /** Clauses of the lot's norm with their verdict, as measured; empty before a check. */
  checked: { clause: string; verdict: string }[]
  pictures: LabelPicture[]
  demo: boolean
  /** Text of the square code: lot, kind, date, and the address of its page where there is one. */
  code: string
}

export function labelOf(lot: Lot, today: { date: DateText; clockSure: boolean }, address: string | null): Label {
  return lot.kind === 'condensate' ? vinegarLabel(lot, today, address) : charcoalLabel(lot, address)
}

function vinegarLabel(lot: CondensateLot, today: { date: DateText; clockSure: boolean }, address: string | null): Label {
  const rest = restOf(lot, today)
  const smoke = smokeRange(lot.bottles)
  const title = lot.stage === 'drawn' ? 'wood-vinegar' : 'crude-condensate'
  return {
    lot: lot.id,
    title,
    made: lot.filled,
    amount: { value: lot.volumeMl, unit: 'mL' },
    wood: lot.wood,
    smokeC:
      smoke === null
        ? null
        : { low: smoke.lowC, high: smoke.highC, estimated: lot.bottles.some((bottle) => bottle.smoke?.by === 'estimate') },
    rest: rest.state === 'refused' ? null : { days: rest.restedDays, drawFrom: rest.drawFrom },
    checked: (currentCheck(lot, today)?.clauses ?? []).map(({ clause, verdict }) => ({ clause, verdict })),
    pictures: ['not-a-drink', 'gloves', 'goggles', 'away-from-water', 'out-of-reach', 'keeps-cool'],
    demo: lot.demo,
    code: codeText(lot.id, title, lot.filled, address),
  }
}

function charcoalLabel(lot: Extract<Lot, { kind: 'charcoal' }>, address: string | null): Label {
  return {
    lot: lot.id,
    title: 'charcoal',
    made: lot.clockSure ? lot.drawn : null,
    amount: { value: lot.leftG, unit: 'g' },
    wood: lot.wood === null ? [] : [lot.wood],
    smokeC: null,
    rest: null,
    checked: [],
    pictures: ['self-heats', 'open-air', 'out-of-reach'],
    demo: lot.demo,
    code: codeText(lot.id, 'charcoal', lot.clockSure ? lot.drawn : null, address),
  }
}

function codeText(lot: string, title: Label['title'], made: DateText | null, address: string | null): string {
  return address === null ? `LOT ${lot} / ${title} / ${made ?? '-'}` : `${address}#/lots/${encodeURIComponent(lot)}`
}
