import type { Ms, Reason } from '../../contract/fold.ts'
import type { DripLook } from '../../contract/vocabulary.ts'
import type { Advice } from '../estimate/types.ts'
import { newest } from '../firing/facts.ts'
import { mean } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import { fireHolds, startHeat, stepHeat, type Heat } from './heat.ts'
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
/** A smoke at its limit may only be arriving at a plateau: longer. */
const bandDwellMs = 10 * minuteMs
const shutDwellMs = 8 * minuteMs
/** How long a drip seen clear holds the start back: the next glass is due by then. Common practice, no source. */
const clearHoldsMs = 25 * minuteMs
/** The coolest smoke at which a village kiln's plateau stood was 55 °C (trade facts 1.2.4); the probes may read a little less. */
const sourFromC = 45
const paleHoldsMs = 25 * minuteMs

/** One minute of the window. `advice` leads where there is no good smoke probe. */
export function stepWindow(w: Window, look: Look, advice: Advice | null): void {
  stepHeat(w.heat, look)
  const model = advice !== null && advice.collectWorthPerH !== null ? advice : null
  w.turning = smokeStart(look) ?? startSigns(look, w.heat)
  takeBack(w, look)
  if (!w.open) open(w, look, model)
  else if (!w.shut) shut(w, look, model)
  else if (w.shutAt !== null && look.litAt !== null) {
    const share = (look.at - look.litAt) / Math.max(1, w.shutAt - look.litAt)
    const votes = charredVotes(look, w.heat, share)
    w.charred = carried(votes) ? votes.yes : null
  }
}

/**
 * What is seen later than a call and speaks against it: clear water before the bottle stood, a pale drip after the stop. Once acids were
 * seen a clear glass is a lull (in simulated firings four of ten were pale again within the half hour) and a little water costs little.
 */
function takeBack(w: Window, look: Look): void {
  const drip = newest(look.facts.drip)
  if (drip === null) return
  const water = drip.look === 'clear' && !sourWasSeen(look)
  if (w.open && !w.shut && look.facts.startedAt === null && water && w.openAt !== null && drip.at > w.openAt) {
    w.open = false
    w.openSince = null
  }
  const smoke = mean(look.past.smoke, 10)
  const sure = smoke !== null && smoke >= look.config.limits.smokeStopC
  if (w.shut && look.facts.stoppedAt === null && drip.look === 'pale' && w.shutAt !== null && drip.at > w.shutAt && !sure) {
    w.shut = false
    w.shutSince = null
  }
}

function open(w: Window, look: Look, model: Advice | null): void {
  if (look.facts.startedAt !== null) {
    w.open = true
    w.openAt = look.facts.startedAt
    w.openBecause = [{ code: 'logged' }]
    return
  }
  const seen = sightedStart(look)
  const because = seen ?? judgedStart(w, look, model)
  const held = heldBy(look, ['clear'], clearHoldsMs) && !sourWasSeen(look)
  w.openSince = because === null || held ? null : (w.openSince ?? look.at)
  if (because === null || held || w.openSince === null) return
  const dwellMs = because[0]?.code === 'smoke-over' ? bandDwellMs : openDwellMs
  if (seen === null && look.at - w.openSince < dwellMs) return
  w.open = true
  w.openAt = look.at
  w.openBecause = because
}

/** The band of the smoke or the model, whichever is sooner: in rain and with a strong draught the smoke is late. Without a model the signs. */
function judgedStart(w: Window, look: Look, model: Advice | null): Reason[] | null {
  if (model === null) return w.turning
  return smokeStart(look) ?? (model.startCollecting ? (model.because['start-collecting'] ?? []) : null)
}

function sourWasSeen(look: Look): boolean {
  return look.facts.drip.some(({ look: seen }) => seen === 'pale' || seen === 'amber' || seen === 'dark' || seen === 'black')
}

/** What speaks for a stop, and how long it must stand. */
interface StopSigns {
  because: Reason[]
  dwellMs: Ms
}

function shut(w: Window, look: Look, model: Advice | null): void {
  const signs = sightedStop(look) ?? (model === null ? rulesStop(w, look) : judgedStop(w, look, model))
  w.shutSince = signs === null ? null : (w.shutSince ?? look.at)
  if (signs === null || w.shutSince === null || look.at - w.shutSince < signs.dwellMs) return
  w.shut = true
  w.shutAt = look.at
  w.shutBecause = signs.because
}

const lasting = (because: Reason[] | null): StopSigns | null => (because === null ? null : { because, dwellMs: shutDwellMs })

/**
 * The model's stop, with or without a smoke probe; the published band is the outer bound of both. An eye on the drip holds the model back.
 * The model has smoothed and confirmed what it says. Chosen on 209 firings; on 46 fresh ones 0.03 more was captured with a smoke probe, nothing with three.
 */
function judgedStop(w: Window, look: Look, model: Advice): StopSigns | null {
  const smoke = mean(look.past.smoke, 10)
  const limit = look.config.limits.smokeStopC
  const over: Reason[] | null = smoke !== null && smoke >= limit ? [{ code: 'smoke-over', value: smoke, limit }] : null
  const pale = heldBy(look, ['pale'], paleHoldsMs)
  if (model.stopCollecting && !pale) {
    const judged = model.because['stop-collecting'] ?? [{ code: 'worth-now', value: model.collectWorthPerH ?? 0 }]
    return { because: [...(over ?? []), ...judged], dwellMs: 0 }
  }
  if (over !== null) return lasting(over)
  return pale || smoke !== null || !smokeWasHeard(look) || model.sure !== 'low' ? null : lasting(signedStop(w, look))
}

/** A probe that fell silent took the outer bound with it: once the members that stood in for it differ too much, the signs may stop as well. */
function smokeWasHeard(look: Look): boolean {
  return look.past.smoke.values.some((value) => value !== null)
}

function signedStop(w: Window, look: Look): Reason[] | null {
  const votes = stopVotes(look, w.heat)
  return carried(votes) ? votes.yes : null
}

/** The smoke where it is measured, else the votes; a drip seen pale holds both back for a while. */
function rulesStop(w: Window, look: Look): StopSigns | null {
  const smoke = mean(look.past.smoke, 10)
  const pale = heldBy(look, ['pale'], paleHoldsMs)
  if (smoke === null) return pale ? null : lasting(signedStop(w, look))
  return smoke < look.config.limits.smokeStopC && pale ? null : lasting(smokeStop(look))
}

/** A pale drip or yellow smoke starts at once, unless the fire is going out or nothing is warm yet: one glass can deceive. */
function sightedStart(look: Look): Reason[] | null {
  const warmest = Math.max(...[look.past.wall, look.past.outlet, look.past.smoke].map((past) => mean(past, 10) ?? 0))
  if (!fireHolds(look) || warmest < sourFromC) return null
  const drip = newest(look.facts.drip)?.look
  const smoke = newest(look.facts.smoke)?.look
  if (drip === 'pale' || drip === 'amber') return [{ code: `seen-drip-${drip}` }]
  return smoke === 'yellow' && drip !== 'clear' && drip !== 'none' ? [{ code: 'seen-smoke-yellow' }] : null
}

function sightedStop(look: Look): StopSigns | null {
  const drip = newest(look.facts.drip)
  return drip !== null && (drip.look === 'dark' || drip.look === 'black')
    ? { because: [{ code: `seen-drip-${drip.look}` }], dwellMs: 0 }
    : null
}

function heldBy(look: Look, looks: readonly DripLook[], forMs: Ms): boolean {
  const drip = newest(look.facts.drip)
  return drip !== null && looks.includes(drip.look) && look.at - drip.at < forMs
}
