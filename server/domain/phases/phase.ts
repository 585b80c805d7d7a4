import type { Ms, Reason } from '../../contract/fold.ts'
import type { Phase } from '../../contract/vocabulary.ts'
import type { Look } from '../firing/look.ts'
import { highest, lowest, mean, slope } from '../firing/history.ts'
import { newest } from '../firing/facts.ts'
import type { Window } from '../calls/window.ts'
import { drumRateKPerH, smokeBands, wallBands } from './limits.ts'

/** Where the firing stands, and since when the conditions of other phases have held. Times ms. */
export interface PhaseState {
  phase: Phase
  since: Ms
  because: Reason[]
  /** Since when what a later phase asks for has held without a break. */
  held: Partial<Record<Phase, Ms>>
  fallingSince: Ms | null
  /** Lighting read from the probes where nobody logged it. */
  litInferredAt: Ms | null
  /** Phase when the kiln was sealed: what it goes back to when the entry is corrected. */
  beforeSeal: Phase | null
}

export function startPhase(at: Ms): PhaseState {
  return { phase: 'idle', since: at, because: [], held: {}, fallingSince: null, litInferredAt: null, beforeSeal: null }
}

interface Step {
  phase: Phase
  /** Dwell for a drum, min. */
  dwellMin: number
  met: (look: Look, window: Window) => Reason[] | null
  /** True once the evidence is clearly gone: dead-band below the limit. */
  gone: (look: Look) => boolean
}

const order: readonly Phase[] = ['kindling', 'drying', 'breakdown', 'vinegar', 'tar', 'clearing']
const minuteMs = 60_000

/** Firebox this hot with nobody having logged a lighting means that somebody lit it: common practice, no source. */
const inferredFireC = 250
/** With no load in the book it may be embers in an emptied drum, or a trial fire: the pipe must warm by so much as well, or the fire last. Own judgement. */
const pipeWarmsK = 10
const lastsMin = 60

const smokeOf = (look: Look): number | null => mean(look.past.smoke, 10)
const wallOf = (look: Look): number | null => mean(look.past.wall, 10)

function over(code: string, value: number | null, limit: number): Reason[] | null {
  return value !== null && value >= limit ? [{ code, value, limit }] : null
}

const steps: readonly Step[] = [
  {
    phase: 'drying',
    dwellMin: 3,
    met: (look) => {
      const smoke = smokeOf(look)
      if (smoke !== null) return over('smoke-over', smoke, smokeBands.drying)
      return over('wall-over', wallOf(look), wallBands.drying) ?? over('outlet-over', mean(look.past.outlet, 10), smokeBands.drying)
    },
    gone: () => false,
  },
  {
    phase: 'breakdown',
    dwellMin: 10,
    met: (look, window) => {
      const smoke = smokeOf(look)
      const seen = newest(look.facts.smoke)
      if (seen?.look === 'yellow' || seen?.look === 'blue') return [{ code: `seen-smoke-${seen.look}` }]
      if (window.turning !== null) return window.turning
      if (smoke === null) return over('wall-over', wallOf(look), wallBands.breakdown)
      if (smoke > smokeBands.plateauTop) return over('smoke-over', smoke, smokeBands.plateauTop)
      // Between 75 and 87 only a smoke that climbs is breakdown: one that stands is water leaving the cold end.
      const rate = slope(look.past.smoke, 60) ?? slope(look.past.smoke, 20)
      return smoke >= smokeBands.breakdown && rate !== null && rate >= 4
        ? [
            { code: 'smoke-over', value: smoke, limit: smokeBands.breakdown },
            { code: 'smoke-climbs', value: rate, limit: 4 },
          ]
        : null
    },
    gone: (look) => {
      const smoke = smokeOf(look)
      if (smoke !== null) return smoke < smokeBands.drying + 10
      const wall = wallOf(look)
      return wall !== null && wall < wallBands.breakdown - 30
    },
  },
  {
    phase: 'vinegar',
    dwellMin: 0,
    met: (_look, window) => (window.open ? window.openBecause : null),
    gone: () => false,
  },
  {
    phase: 'tar',
    dwellMin: 0,
    met: (_look, window) => (window.shut ? window.shutBecause : null),
    gone: () => false,
  },
  {
    phase: 'clearing',
    dwellMin: 10,
    met: (look, window) => {
      if (!window.shut) return null
      const smoke = smokeOf(look)
      const seen = newest(look.facts.smoke)
      if (seen?.look === 'clear') return [{ code: 'seen-smoke-clear' }]
      if (smoke !== null) return over('smoke-over', smoke, smokeBands.clearing)
      return window.charred
    },
    gone: () => false,
  },
]

/** Dwell in ms: a slow clay kiln waits longer than a drum, in the proportion of their warming (trade facts 9.3). */
export function dwellMs(look: Look, minutes: number): number {
  const rate = slope(look.past.smoke, 60) ?? slope(look.past.wall, 60)
  const factor = rate === null ? 1 : Math.min(6, Math.max(1, drumRateKPerH / Math.max(1, Math.abs(rate))))
  return minutes * factor * minuteMs
}

/** One grid step. `cold` carries the reasons while the open call stands. Returns true when the phase changed. */
export function stepPhase(state: PhaseState, look: Look, window: Window, cold: Reason[] | null): boolean {
  const { facts, at } = look
  if (facts.unloadedAt !== null) return move(state, at, 'idle', [{ code: 'unloaded' }])
  if (facts.sealedAt !== null) return sealed(state, look, cold)
  if (state.beforeSeal !== null) {
    const back = state.beforeSeal
    state.beforeSeal = null
    return move(state, at, back, [{ code: 'seal-corrected' }])
  }
  if (state.phase === 'idle') return ignite(state, look)
  if (state.phase === 'failed') return relight(state, look)
  if (fails(state, look) && isNobodys(state, look)) return move(state, look.at, 'idle', [{ code: 'signs-gone' }])
  if (fails(state, look))
    return move(state, at, 'failed', [{ code: 'fire-out', value: look.now.firebox ?? 0, limit: look.config.limits.fireOutC }])
  return forward(state, look, window) || back(state, look)
}

function move(state: PhaseState, at: Ms, phase: Phase, because: Reason[]): boolean {
  if (state.phase === phase) return false
  state.phase = phase
  state.since = at
  state.because = because
  state.held = {}
  state.fallingSince = null
  return true
}

function ignite(state: PhaseState, look: Look): boolean {
  if (look.facts.litAt !== null && look.facts.litAt <= look.at) return move(state, look.at, 'kindling', [{ code: 'logged-light' }])
  const firebox = look.now.firebox
  const hot = firebox !== undefined && firebox >= inferredFireC
  if (!hot) {
    delete state.held.kindling
    return false
  }
  state.held.kindling ??= look.at
  if (look.at - state.held.kindling < 3 * minuteMs) return false
  const burntMin = (look.at - state.held.kindling) / minuteMs
  if (look.facts.loadedAt === null && burntMin < lastsMin && !pipeWarms(look)) return false
  state.litInferredAt = state.held.kindling
  return move(state, look.at, 'kindling', [{ code: 'firebox-over', value: firebox, limit: inferredFireC, forS: 180 }])
}

/** Warm gas comes through: the drum draws. */
function pipeWarms({ past }: Look): boolean {
  return [past.outlet, past.smoke].some((pipe) => {
    const now = mean(pipe, 3)
    const low = lowest(pipe, 120)
    return now !== null && low !== null && now - low >= pipeWarmsK
  })
}

/** Cold is what the safety call says; a rise makes it cooling again. */
function sealed(state: PhaseState, look: Look, cold: Reason[] | null): boolean {
  if (state.phase !== 'cooling' && state.phase !== 'cold') {
    state.beforeSeal = state.phase
    return move(state, look.at, 'cooling', [{ code: 'logged-seal' }])
  }
  return cold === null ? move(state, look.at, 'cooling', [{ code: 'not-cold' }]) : move(state, look.at, 'cold', cold)
}

function relight(state: PhaseState, look: Look): boolean {
  const firebox = look.now.firebox
  if (firebox === undefined || firebox < look.config.limits.fireLowC) {
    delete state.held.kindling
    return false
  }
  state.held.kindling ??= look.at
  if (look.at - state.held.kindling < 2 * minuteMs) return false
  return move(state, look.at, 'kindling', [{ code: 'firebox-over', value: firebox, limit: look.config.limits.fireLowC, forS: 120 }])
}

const outForMin = 30
const cooledForMin = 60

/**
 * Early: the fire is out and the wood no longer warms. Later the charge may run by itself, so the wall must fall as well for an hour,
 * and hardly any vapour come.
 */
function fails(state: PhaseState, look: Look): boolean {
  const { past } = look
  const top = highest(past.firebox, outForMin)
  const out = top !== null && top < look.config.limits.fireOutC && past.firebox.values.length >= outForMin
  if (!out || look.litAt === null || look.at - look.litAt < 40 * minuteMs || look.at - state.since < 20 * minuteMs) return false
  if (state.phase === 'kindling' || state.phase === 'drying') {
    const wall = slope(past.wall, 30)
    return wall === null || wall < 4
  }
  if (state.phase !== 'breakdown' && state.phase !== 'vinegar') return false
  const wall = slope(past.wall, cooledForMin)
  const vapour = mean(past.smoke, 10) ?? mean(past.outlet, 10)
  return wall !== null && wall < -6 && vapour !== null && vapour < smokeBands.drying
}

/** A fire that nobody logged, in a drum that nobody loaded, and that is out before any wood caught was no firing: nothing is to be lit again. */
function isNobodys(state: PhaseState, { facts }: Look): boolean {
  const early = state.phase === 'kindling' || state.phase === 'drying'
  return early && facts.litAt === null && facts.loadedAt === null && state.litInferredAt !== null
}

function forward(state: PhaseState, look: Look, window: Window): boolean {
  const current = order.indexOf(state.phase)
  let target: { phase: Phase; because: Reason[] } | null = null
  for (const step of steps) {
    if (order.indexOf(step.phase) <= current) continue
    const because = step.met(look, window)
    if (because === null) {
      delete state.held[step.phase]
      continue
    }
    const since = (state.held[step.phase] ??= look.at)
    if (look.at - since >= (step.dwellMin === 0 ? 0 : dwellMs(look, step.dwellMin)))
      target = { phase: step.phase, because: lasting(because, look.at - since) }
  }
  return target !== null && move(state, look.at, target.phase, target.because)
}

const lasting = (because: Reason[], ms: Ms): Reason[] => (ms === 0 ? because : because.map((r) => ({ ...r, forS: Math.round(ms / 1000) })))

/** Back from breakdown to drying when the fire failed and its signs are gone for a good while. */
function back(state: PhaseState, look: Look): boolean {
  const step = steps.find((s) => s.phase === state.phase)
  if (state.phase !== 'breakdown' || step === undefined || !step.gone(look)) {
    state.fallingSince = null
    return false
  }
  state.fallingSince ??= look.at
  if (look.at - state.fallingSince < dwellMs(look, 20)) return false
  return move(state, look.at, 'drying', [{ code: 'signs-gone', forS: Math.round((look.at - state.fallingSince) / 1000) }])
}
