import type { Act } from '../../contract/actions.ts'
import type { ActId, Charge, Ms } from '../../contract/fold.ts'
import type { DripLook, Opening, SmokeLook } from '../../contract/vocabulary.ts'

export interface Seen<L> {
  look: L
  at: Ms
}

/** What the log says was done and seen in this firing, each at the time it was really done. */
export interface Facts {
  loadedAt: Ms | null
  litAt: Ms | null
  stoppedFeedingAt: Ms | null
  startedAt: Ms | null
  stoppedAt: Ms | null
  refinedAt: Ms | null
  sealedAt: Ms | null
  crackedAt: Ms | null
  openedAt: Ms | null
  unloadedAt: Ms | null
  armedAt: Ms | null
  feeds: Ms[]
  wettings: Ms[]
  /** Newest last. */
  smoke: Seen<SmokeLook>[]
  drip: Seen<DripLook>[]
  mouth: Opening | null
  chimney: Opening | null
  bottleNumber: number
  bottleLitres: number | null
  lastBottleAt: Ms | null
  lastGlassAt: Ms | null
  charge: Charge
}

export function noFacts(): Facts {
  return {
    loadedAt: null,
    litAt: null,
    stoppedFeedingAt: null,
    startedAt: null,
    stoppedAt: null,
    refinedAt: null,
    sealedAt: null,
    crackedAt: null,
    openedAt: null,
    unloadedAt: null,
    armedAt: null,
    feeds: [],
    wettings: [],
    smoke: [],
    drip: [],
    mouth: null,
    chimney: null,
    bottleNumber: 1,
    bottleLitres: null,
    lastBottleAt: null,
    lastGlassAt: null,
    charge: {},
  }
}

/** Acts that still count, in the order in which they were done: an act named by a later `corrects` does not. */
export function standing(acts: readonly Act[]): Act[] {
  const void_ = new Set<ActId>()
  for (const act of acts) if (act.corrects !== undefined) void_.add(act.corrects)
  return acts.filter((act) => !void_.has(act.id)).sort((a, b) => a.doneAt - b.doneAt)
}

/** Reads the whole log of a firing anew, so that back-dated and corrected entries need no undoing. */
export function factsOf(acts: readonly Act[]): Facts {
  const facts = noFacts()
  for (const act of standing(acts)) note(facts, act)
  return facts
}

function note(facts: Facts, { act, doneAt }: Act): void {
  switch (act.action) {
    case 'load':
      facts.loadedAt = doneAt
      facts.charge = {
        ...(act.massKg === undefined ? {} : { massKg: act.massKg }),
        ...(act.moisturePct === undefined ? {} : { moisturePct: act.moisturePct }),
        ...(act.pieceMm === undefined ? {} : { pieceMm: act.pieceMm }),
      }
      break
    case 'light':
      facts.litAt ??= doneAt
      break
    case 'start-collecting':
      facts.startedAt = doneAt
      facts.stoppedAt = null
      break
    case 'stop-collecting':
      facts.stoppedAt = doneAt
      break
    case 'refuel':
      facts.feeds.push(doneAt)
      break
    case 'wet-condenser':
      facts.wettings.push(doneAt)
      break
    case 'swap-bottle':
      facts.bottleNumber += 1
      facts.bottleLitres = act.litres ?? null
      facts.lastBottleAt = doneAt
      break
    case 'stop-feeding':
      facts.stoppedFeedingAt = doneAt
      break
    case 'air':
      facts.mouth = act.mouth ?? facts.mouth
      facts.chimney = act.chimney ?? facts.chimney
      break
    case 'refine':
      facts.refinedAt = doneAt
      break
    case 'seal':
      facts.sealedAt ??= doneAt
      facts.openedAt = null
      break
    case 'crack':
      facts.crackedAt = doneAt
      break
    case 'reseal':
      facts.sealedAt = doneAt
      facts.crackedAt = null
      facts.openedAt = null
      break
    case 'open':
      facts.openedAt = doneAt
      break
    case 'unload':
      facts.unloadedAt = doneAt
      break
    case 'glass':
      facts.lastGlassAt = doneAt
      if (act.drip !== undefined) facts.drip.push({ look: act.drip, at: doneAt })
      break
    case 'observe':
      if (act.smoke !== undefined) facts.smoke.push({ look: act.smoke, at: doneAt })
      if (act.drip !== undefined) facts.drip.push({ look: act.drip, at: doneAt })
      break
    case 'arm':
      facts.armedAt = doneAt
      break
    case 'weather':
    case 'note':
    case 'reading':
    case 'acknowledge':
    case 'shelve':
    case 'unshelve':
      break
  }
}

export function newest<L>(seen: readonly Seen<L>[]): Seen<L> | null {
  return seen.at(-1) ?? null
}
