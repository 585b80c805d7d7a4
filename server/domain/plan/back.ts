import type { Checked } from '../../contract/entry-problems.ts'
import type { CondensateLot, DateText, Ledger } from '../../contract/lots.ts'
import type { PlanBack, Range } from '../../contract/plan.ts'
import { addDays, daysBetween, readDate } from '../entered/calendar.ts'
import { accept, outside, problem, refuse } from '../entered/number.ts'
import { notReady } from '../lots/ready.ts'
import { restDays, restOf } from '../lots/rest.ts'
import { usableShare } from '../yield/condensate.ts'

export interface PlanWish {
  wantedMl: number
  by: DateText
  /** Crude litres that one firing of this kiln gives. */
  crudeLPerFiring: Range
  woodKgPerFiring: number
  /** Days from one firing to the next: firing, cooling, loading. */
  daysPerFiring: number
}

/** Drawing, checking and a day in hand after the rest. */
const drawAndCheckDays = 2
/** Wood is felled three to four weeks before it is charred, so that it is half dry (Sasahara, drum-kiln textbook). */
const dryingDays = 28

/** From litres wanted by a date back to lots, firings, wood and days. Firings are counted for a middling yield; the range says how many it may take. */
export function planBack(wish: PlanWish, ledger: Ledger, today: { date: DateText; clockSure: boolean }): Checked<PlanBack> {
  const by = readDate('by', wish.by)
  const wrong = [
    ...(by.ok ? [] : by.problems),
    ...outside('wantedMl', wish.wantedMl, 1, 100_000_000, 'mL'),
    ...outside('crudeLPerFiring', wish.crudeLPerFiring.low, 0.01, 100_000, 'L'),
    ...outside('woodKgPerFiring', wish.woodKgPerFiring, 1, 100_000, 'kg'),
    ...outside('daysPerFiring', wish.daysPerFiring, 1, 60, 'd'),
  ]
  if (wrong.length > 0) return refuse(...wrong)
  if (!today.clockSure) return refuse(problem('clock-unconfirmed', 'today', { date: today.date }))
  if (wish.by < today.date) return refuse(problem('date-too-early', 'by', { date: today.date }))
  const held = holdings(ledger, wish.by, today)
  const fromStockMl = Math.min(wish.wantedMl, held.readyMl)
  let openMl = wish.wantedMl - fromStockMl
  const fromResting: PlanBack['fromResting'] = []
  for (const lot of held.resting) {
    if (openMl <= 0) break
    const expectedMl = Math.min(openMl, lot.expectedMl)
    fromResting.push({ ...lot, expectedMl })
    openMl -= expectedMl
  }
  const base = { wantedMl: wish.wantedMl, by: wish.by, fromStockMl, fromResting, shortMl: openMl }
  if (openMl === 0) {
    return accept({
      ...base,
      firings: { least: 0, likely: 0, most: 0 },
      woodKg: 0,
      lastFiringOn: null,
      firstFiringOn: null,
      gatherBy: null,
    })
  }
  const firings = (crudeL: number, share: number): number => Math.ceil(openMl / (1000 * crudeL * share))
  const likely = firings(wish.crudeLPerFiring.likely, usableShare.likely)
  const lastFiringOn = addDays(wish.by, -(restDays + drawAndCheckDays))
  const firstFiringOn = addDays(lastFiringOn, -(likely - 1) * wish.daysPerFiring)
  if (firstFiringOn < today.date) {
    const late = daysBetween(firstFiringOn, today.date)
    return refuse(problem('date-too-early', 'by', { date: addDays(wish.by, late), firings: likely, shortMl: openMl }))
  }
  return accept({
    ...base,
    firings: {
      least: firings(wish.crudeLPerFiring.high, usableShare.high),
      likely,
      most: firings(wish.crudeLPerFiring.low, usableShare.low),
    },
    woodKg: likely * wish.woodKgPerFiring,
    lastFiringOn,
    firstFiringOn,
    gatherBy: addDays(firstFiringOn, -dryingDays),
  })
}

/** Ready lots, and those that will be by the date, the earliest first. A lot that failed or whose date is in doubt counts for nothing. */
function holdings(ledger: Ledger, by: DateText, today: { date: DateText; clockSure: boolean }) {
  let readyMl = 0
  const resting: { lot: string; readyOn: DateText; expectedMl: number }[] = []
  for (const lot of ledger.lots.values()) {
    if (lot.kind !== 'condensate' || lot.volumeMl === 0 || lot.treatedWood) continue
    if (notReady(lot, today).length === 0) readyMl += lot.volumeMl
    else if (lot.stage === 'crude') {
      const rest = restOf(lot, today)
      if (rest.state === 'refused') continue
      const marked = rest.drawFrom > today.date ? rest.drawFrom : today.date
      const readyOn = addDays(marked, drawAndCheckDays)
      if (readyOn <= by) resting.push({ lot: lot.id, readyOn, expectedMl: expectedMiddleMl(lot) })
    }
  }
  resting.sort((a, b) => (a.readyOn < b.readyOn ? -1 : a.readyOn > b.readyOn ? 1 : 0))
  return { readyMl, resting }
}

/** As measured, otherwise the usual share of the crude. */
function expectedMiddleMl(lot: CondensateLot): number {
  return lot.layers?.vinegarMl ?? Math.floor(lot.volumeMl * usableShare.likely)
}
