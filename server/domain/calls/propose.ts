import type { Reason } from '../../contract/fold.ts'
import type { Phase } from '../../contract/vocabulary.ts'
import type { OpenJudgement } from '../cooling/open.ts'
import type { Advice } from '../estimate/types.ts'
import { newest } from '../firing/facts.ts'
import { mean, slope } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import { smokeBands, wallBands } from '../phases/limits.ts'
import type { CallStates, Done, Proposal, Proposals } from './state.ts'
import type { Window } from './window.ts'

export interface Ground {
  look: Look
  phase: Phase
  window: Window
  calls: CallStates
  advice: Advice | null
  open: OpenJudgement | null
  openWithdraw: Reason[] | null
}

const none: Proposal = { due: false, withdraw: false, because: [] }
/** Smoke that is thin and clear: between the pale blue of 260 and the colourless 360 of the published tables (trade facts 1.2.10-1.2.15). */
const sealSmokeC = 280
const sealDeadBandK = 30

/** What each call should do now. Only what may stand in this phase is proposed. */
export function propose(ground: Ground): Proposals {
  const { look, phase, open, openWithdraw } = ground
  if (look.facts.sealedAt !== null) {
    if (open === null) return {}
    // the night is judged every ten minutes, what speaks against it at once
    return { open: { due: open.due && openWithdraw === null, withdraw: openWithdraw !== null, because: openWithdraw ?? open.because } }
  }
  if (phase === 'idle') return {}
  return { 'stop-feeding': stopFeeding(ground), 'start-collecting': start(ground), 'stop-collecting': stop(ground), seal: seal(ground) }
}

/** Let-run kilns only: the fire is taken away when the smoke is thick, white and jetting (trade facts 1.2.3, 2.16). */
function stopFeeding({ look, window }: Ground): Proposal {
  if (look.config.way !== 'let-run') return none
  const smoke = mean(look.past.smoke, 10)
  const wall = mean(look.past.wall, 10)
  const rate = slope(look.past.smoke, 20)
  if (window.shut) return none
  if (smoke !== null)
    return smoke >= smokeBands.breakdown && (rate ?? 0) > 0
      ? { due: true, withdraw: false, because: [{ code: 'smoke-over', value: smoke, limit: smokeBands.breakdown }] }
      : {
          ...none,
          withdraw: smoke < smokeBands.breakdown - 15,
          because: [{ code: 'smoke-under', value: smoke, limit: smokeBands.breakdown - 15 }],
        }
  return wall !== null && wall >= wallBands.breakdown && window.turning !== null
    ? { due: true, withdraw: false, because: [{ code: 'wall-over', value: wall, limit: wallBands.breakdown }, ...window.turning] }
    : none
}

function start({ look, phase, window, calls }: Ground): Proposal {
  if (phase === 'failed') return { due: false, withdraw: true, because: [{ code: 'fire-failed' }] }
  if (calls['stop-collecting'].state === 'due' || calls['stop-collecting'].state === 'done') return none
  const drip = newest(look.facts.drip)
  const since = calls['start-collecting']
  // only water comes: not yet
  if (since.state === 'due' && drip?.look === 'clear' && drip.at > since.since && !window.open)
    return { due: false, withdraw: true, because: [{ code: 'seen-drip-clear' }] }
  return { due: window.open && !window.shut, withdraw: false, because: window.openBecause }
}

function stop({ look, window, calls }: Ground): Proposal {
  const drip = newest(look.facts.drip)
  const stop = calls['stop-collecting']
  // only an eye on a pale drip, later than the call, takes a stop back: a late one costs six times an early one
  if (stop.state === 'due' && !window.shut && drip !== null && drip.at > stop.since)
    return { due: false, withdraw: true, because: [{ code: `seen-drip-${drip.look}` }] }
  return { due: window.shut && window.open, withdraw: false, because: window.shutBecause }
}

function seal({ look, phase, window, advice }: Ground): Proposal {
  // charring that is done needs no stop before it: there is nothing left to collect
  if (!window.shut && !(window.open && advice?.seal)) return none
  const smoke = mean(look.past.smoke, 10)
  const seen = newest(look.facts.smoke)
  if (seen?.look === 'clear' && (smoke === null || smoke >= smokeBands.clearing - 40))
    return { due: true, withdraw: false, because: [{ code: 'seen-smoke-clear' }] }
  if (smoke !== null) {
    if (phase === 'clearing' && smoke >= sealSmokeC)
      return { due: true, withdraw: false, because: [{ code: 'smoke-over', value: smoke, limit: sealSmokeC }] }
    // a kiln whose smoke stays cooler to its end: the model tells that charring is done
    if (advice?.seal) return { due: true, withdraw: false, because: advice.because.seal ?? [] }
    const low = sealSmokeC - sealDeadBandK
    return { due: false, withdraw: smoke < low, because: [{ code: 'smoke-under', value: smoke, limit: low }] }
  }
  if (advice !== null && advice.collectWorthPerH !== null) return { due: advice.seal, withdraw: false, because: advice.because.seal ?? [] }
  return { due: phase === 'clearing' && window.charred !== null, withdraw: false, because: window.charred ?? [] }
}

/** When the operator did what a call asks for. */
export function doneOf(look: Look): Done {
  const { facts } = look
  const done: Done = {}
  if (facts.startedAt !== null) done['start-collecting'] = facts.startedAt
  if (facts.stoppedAt !== null) done['stop-collecting'] = facts.stoppedAt
  if (facts.stoppedFeedingAt !== null) done['stop-feeding'] = facts.stoppedFeedingAt
  if (facts.sealedAt !== null) done.seal = facts.sealedAt
  const opened = facts.openedAt ?? facts.crackedAt
  if (opened !== null) done.open = opened
  return done
}
