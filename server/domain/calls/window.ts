import type { Ms, Reason } from '../../contract/fold.ts'
import type { Advice } from '../estimate/types.ts'
import { newest } from '../firing/facts.ts'
import { mean } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import { startHeat, stepHeat, type Heat } from './heat.ts'
import { smokeStart, smokeStop } from './smoke.ts'
import { carried, charredVotes, startSigns, stopVotes } from './votes.ts'

/** The collecting window as judged so far, each edge with its reasons. Phases and calls both read it, so that they never disagree. */
export interface Window {
  heat: Heat
  /** Signs that the wood begins to give itself up. */
  turning: Reason[] | null
  open: boolean
  openBecause: Reason[]
  openAt: Ms | null
  shut: boolean
  shutBecause: Reason[]
  shutAt: Ms | null
  /** Signs that charring is done, where the smoke is not measured. */
  charred: Reason[] | null
  openSince: Ms | null
  shutSince: Ms | null
}

export function startWindow(): Window {
  return {
    heat: startHeat(),
    turning: null,
    open: false,
    openBecause: [],
    openAt: null,
    shut: false,
    shutBecause: [],
    shutAt: null,
    charred: null,
    openSince: null,
    shutSince: null,
  }
}

const minuteMs = 60_000
const openDwellMs = 5 * minuteMs
const shutDwellMs = 8 * minuteMs
/** How long a drip seen clear holds the start back: the next glass is due by then. Common practice, no source. */
const clearHoldsMs = 25 * minuteMs

/** One minute of the window. `advice` leads where there is no good smoke probe. */
export function stepWindow(w: Window, look: Look, advice: Advice | null): void {
  stepHeat(w.heat, look)
  if (!w.open) open(w, look, advice)
  else if (!w.shut) shut(w, look, advice)
  else if (w.shutAt !== null && mean(look.past.smoke, 10) === null && look.litAt !== null) {
    const share = (look.at - look.litAt) / Math.max(1, w.shutAt - look.litAt)
    const votes = charredVotes(look, w.heat, share)
    w.charred = carried(votes) ? votes.yes : null
  }
}

function open(w: Window, look: Look, advice: Advice | null): void {
  const seen = sightedStart(look)
  const measured = smokeStart(look) ?? startSigns(look, w.heat)
  const smoke = mean(look.past.smoke, 10) !== null
  const model = advice !== null && advice.collectWorthPerH !== null && !smoke
  const because = seen ?? (model ? (advice.startCollecting ? (advice.because['start-collecting'] ?? []) : null) : measured)
  w.turning = measured
  const held = held_(look)
  w.openSince = because === null || held ? null : (w.openSince ?? look.at)
  if (because === null || held || w.openSince === null) return
  if (seen === null && look.at - w.openSince < openDwellMs) return
  w.open = true
  w.openAt = look.at
  w.openBecause = because
}

function shut(w: Window, look: Look, advice: Advice | null): void {
  const seen = sightedStop(look)
  const smoke = mean(look.past.smoke, 10) !== null
  const votes = stopVotes(look, w.heat)
  const measured = smoke ? smokeStop(look) : carried(votes) ? votes.yes : null
  const model = advice !== null && advice.collectWorthPerH !== null && !smoke
  const because = seen ?? (model ? (advice.stopCollecting ? (advice.because['stop-collecting'] ?? []) : null) : measured)
  w.shutSince = because === null ? null : (w.shutSince ?? look.at)
  if (because === null || w.shutSince === null) return
  if (seen === null && look.at - w.shutSince < shutDwellMs) return
  w.shut = true
  w.shutAt = look.at
  w.shutBecause = because
}

function sightedStart(look: Look): Reason[] | null {
  const drip = newest(look.facts.drip)?.look
  const smoke = newest(look.facts.smoke)?.look
  if (drip === 'pale' || drip === 'amber') return [{ code: `seen-drip-${drip}` }]
  return smoke === 'yellow' && drip !== 'clear' && drip !== 'none' ? [{ code: 'seen-smoke-yellow' }] : null
}

function sightedStop(look: Look): Reason[] | null {
  const drip = newest(look.facts.drip)
  return drip !== null && (drip.look === 'dark' || drip.look === 'black') ? [{ code: `seen-drip-${drip.look}` }] : null
}

function held_(look: Look): boolean {
  const drip = newest(look.facts.drip)
  return drip !== null && drip.look === 'clear' && look.at - drip.at < clearHoldsMs
}
