import type { Bottle, LotEntry, LotEvent, Vessel } from '../../server/contract/lots.ts'

export const demijohn: Vessel = { name: 'demijohn', material: 'glass', capacityMl: 10_000, heightMm: 400, place: 'shed' }

export function bottle(number: number, volumeMl: number, smoke: Partial<NonNullable<Bottle['smoke']>> = {}): Bottle {
  return {
    number,
    volumeMl,
    from: Date.parse('2026-10-14T09:00:00Z'),
    to: Date.parse('2026-10-14T12:00:00Z'),
    smoke: { lowC: 82, highC: 142, by: 'probe', probeAt: 'chimney-mouth', ...smoke },
  }
}

/** An entry made on a day at noon by one person, with a confirmed clock unless said otherwise. */
export function entry(id: string, date: string, event: LotEvent, more: Partial<LotEntry> = {}): LotEntry {
  const at = Date.parse(`${date}T12:00:00Z`)
  return { id, at, doneAt: at, date, by: 'demo hand', clockSure: true, event, ...more }
}

/** Lot 7 of the drawing: 8.2 L from one firing of 14 October, rested, measured, drawn into lot 8, checked. */
export const lifeOfALot: readonly LotEntry[] = [
  entry('e1', '2026-10-14', {
    what: 'fill',
    lot: '7',
    firing: 'f1',
    bottles: [bottle(1, 4000), bottle(2, 4200)],
    vessel: demijohn,
    wood: 'eucalyptus',
    demo: true,
  }),
  entry('e2', '2027-01-12', { what: 'layers', lot: '7', lightOilMl: 100, vinegarMl: 7100, tarMl: 1000 }),
  entry('e3', '2027-01-12', { what: 'draw', lot: '7', layer: 'vinegar', volumeMl: 7000, lossMl: 50, into: { lot: '8', vessel: demijohn } }),
  entry('e4', '2027-01-12', { what: 'draw', lot: '7', layer: 'tar', volumeMl: 1000, lossMl: 0 }),
  entry('e5', '2027-01-13', {
    what: 'check',
    lot: '8',
    norm: 'council',
    values: { ph: 2.9, density: { gPerMl: 1.011, atC: 20 }, colour: 'red-brown', clarity: 'clear', acidityPct: 4.1 },
  }),
]
