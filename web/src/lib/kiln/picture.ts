import type { InsideSlice, Ms } from '../../../../server/contract/fold.ts'
import type { KilnView } from '../../../../server/contract/live.ts'
import type { DripLook, Phase, SmokeLook } from '../../../../server/contract/vocabulary.ts'
import { lastSeen } from '../acts/log.ts'
import { channelOf, isSealed, isUnloading, seenForMs } from '../words/sentence.ts'
import { bottleOf } from './bottle.ts'

export interface Picture {
  flames: 0 | 1 | 2 | 3
  slices: InsideSlice[]
  from: 'ensemble' | 'phase' | 'unknown'
  cloths: 'wet' | 'dry' | 'unknown'
  smoke: SmokeLook
  drip: DripLook
  /** Filled between these shares, 0 to 1. */
  bottle: { shown: boolean; low: number; high: number }
  sealed: boolean
}

const minuteMs = 60_000
/** How long wetted cloths stay wet in the sun. Common practice, no source. */
const wetForMs = 30 * minuteMs

const smokeOfPhase: Record<Phase, SmokeLook> = {
  idle: 'none',
  kindling: 'white',
  drying: 'white',
  breakdown: 'white',
  vinegar: 'yellow',
  tar: 'yellow',
  clearing: 'blue',
  cooling: 'none',
  cold: 'none',
  failed: 'none',
}

/** What the drawing shows: what was seen lately, else what is estimated, else what the phase makes likely. */
export function pictureOf(kiln: KilnView, now: Ms): Picture {
  const { firing, estimate } = kiln
  const sealed = isSealed(firing)
  return {
    flames: sealed ? 0 : flamesOf(channelOf(kiln, 'firebox')?.value ?? null),
    // an empty drum holds nothing to estimate
    slices: firing.phase === 'idle' ? [] : (estimate?.inside ?? []),
    from: firing.phase === 'idle' ? 'unknown' : (estimate?.from ?? 'unknown'),
    cloths: clothsOf(kiln, now),
    smoke: sealed ? 'none' : smokeOf(kiln, now),
    drip: dripOf(kiln, now),
    bottle: { shown: firing.collectingSince !== null, ...filled(kiln) },
    // the plates are off once it stands open
    sealed: sealed && !isUnloading(kiln),
  }
}

/** Empty where nothing is known. */
function filled(kiln: KilnView): { low: number; high: number } {
  const { low, high, sizeL } = bottleOf(kiln) ?? { low: 0, high: 0, sizeL: 1 }
  const share = (litres: number): number => Math.min(1, Math.max(0, litres / sizeL))
  return { low: share(low), high: share(high) }
}

function flamesOf(fireboxC: number | null): Picture['flames'] {
  if (fireboxC === null || fireboxC < 100) return 0
  return fireboxC < 250 ? 1 : fireboxC < 450 ? 2 : 3
}

function clothsOf({ firing, alarms }: KilnView, now: Ms): Picture['cloths'] {
  const hot = alarms.some(
    ({ alarm, state }) => (alarm === 'condenser-warm' || alarm === 'condenser-hot') && !/^(normal|returned)/.test(state),
  )
  if (hot) return 'dry'
  if (firing.lastWettedAt === null) return 'unknown'
  return now - firing.lastWettedAt < wetForMs ? 'wet' : 'dry'
}

function smokeOf({ firing }: KilnView, now: Ms): SmokeLook {
  const seen = lastSeen(firing, 'smoke')
  if (seen?.act.action === 'observe' && seen.act.smoke && now - seen.doneAt < seenForMs) return seen.act.smoke
  return smokeOfPhase[firing.phase]
}

function dripOf({ firing, estimate }: KilnView, now: Ms): DripLook {
  if (isSealed(firing) || firing.phase === 'idle') return 'none'
  const seen = lastSeen(firing, 'drip')?.act
  const at = lastSeen(firing, 'drip')?.doneAt ?? 0
  if ((seen?.action === 'observe' || seen?.action === 'glass') && seen.drip && now - at < seenForMs) return seen.drip
  if (!estimate || firing.collectingSince === null) return 'none'
  // the words of common practice for the shares that the fold counts by: watery under 3 % acids, tar-laden over 14 % tar
  if (estimate.tarShare > 0.14) return 'dark'
  return estimate.acidShare < 0.03 ? 'pale' : 'amber'
}

/** Runs of slices in which one state is likely enough to be named: where they lie (0 mouth .. 1 chimney) and what they are. */
export function namedRuns(slices: readonly InsideSlice[]): { state: number; from: number; to: number }[] {
  const runs: { state: number; from: number; to: number }[] = []
  slices.forEach((slice, index) => {
    const state = slice.indexOf(Math.max(...slice))
    const from = index / slices.length
    const to = (index + 1) / slices.length
    const last = runs.at(-1)
    if ((slice[state] ?? 0) < 0.6) return
    if (last?.state === state && Math.abs(last.to - from) < 1e-9) last.to = to
    else runs.push({ state, from, to })
  })
  return runs
}
