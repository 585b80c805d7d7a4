import type { Reason } from '../../contract/fold.ts'
import type { Command, CommandView } from '../../contract/live.ts'
import type { Call, Role } from '../../contract/vocabulary.ts'
import { chargeMass } from '../calls/heat.ts'
import { mean } from './history.ts'
import type { KilnState } from './state.ts'

interface Standing {
  do: Command
  /** The call that stands behind it. */
  call: Call | null
  /** The call that comes after it. */
  next: Call | null
}

/** What the operator is told now: the first that applies, the safest first. */
export function standingOf(state: KilnState): Standing {
  const { facts, phase, calls } = state
  // what was logged counts at once; the calls follow with the next step of the grid
  const collecting = facts.startedAt !== null ? 'done' : calls['start-collecting'].state
  const stopping = facts.stoppedAt !== null ? 'done' : calls['stop-collecting'].state
  if (facts.unloadedAt !== null || facts.openedAt !== null) return { do: 'none', call: null, next: null }
  if (facts.sealedAt !== null) {
    // the trial opening goes on while the small gap stands, until anything rises
    const trial = calls.open.state === 'due' || (facts.crackedAt !== null && phase.phase === 'cold')
    return trial ? { do: 'trial-opening', call: 'open', next: null } : { do: 'keep-shut', call: null, next: null }
  }
  if (phase.phase === 'failed') return { do: 'relight', call: null, next: null }
  // the phase follows a logged lighting with the next step of the grid
  if (phase.phase === 'idle' && facts.litAt !== null) return { do: 'wait', call: null, next: 'start-collecting' }
  if (phase.phase === 'idle') return { do: facts.loadedAt === null ? 'none' : 'light', call: null, next: null }
  if (calls.seal.state === 'due') return { do: 'seal', call: 'seal', next: null }
  if (stopping === 'due') return { do: 'stop-collecting', call: 'stop-collecting', next: 'seal' }
  if (calls['stop-feeding'].state === 'due') return { do: 'stop-feeding', call: 'stop-feeding', next: 'start-collecting' }
  if (stopping === 'done') return { do: 'wait', call: null, next: 'seal' }
  if (collecting === 'done') return { do: 'collect', call: 'start-collecting', next: 'stop-collecting' }
  if (collecting === 'due') return { do: 'start-collecting', call: 'start-collecting', next: 'stop-collecting' }
  return { do: 'wait', call: null, next: 'start-collecting' }
}

export function commandView(state: KilnState): CommandView {
  const standing = standingOf(state)
  const call = standing.call === null ? null : state.calls[standing.call]
  const range = standing.next === null ? null : state.calls[standing.next].forecast
  return {
    do: standing.do,
    since: call?.since ?? state.phase.since,
    next: standing.next === null || range === null ? null : { call: standing.next, range },
    notBefore: standing.do === 'keep-shut' && untoldOf(state) === null ? state.openNotBefore : null,
    because: becauseOf(state, standing, call?.because ?? state.phase.because),
    unless: unlessOf(state, standing),
    sure: sureOf(state, standing),
    doubts: doubtsOf(state),
  }
}

function becauseOf(state: KilnState, standing: Standing, because: Reason[]): Reason[] {
  return standing.do === 'keep-shut' && state.open !== null ? [...(untoldOf(state) ?? []), ...state.open.unless] : because
}

/** Why no call to open may come; null where one may. */
const untoldOf = (state: KilnState): Reason[] | null => state.hints.find(({ hint }) => hint === 'open-untold')?.because ?? null

/** What would turn the command. */
function unlessOf(state: KilnState, standing: Standing): Reason[] {
  switch (standing.do) {
    case 'wait':
      return standing.next === 'start-collecting'
        ? [{ code: 'seen-smoke-yellow' }, { code: 'seen-drip-pale' }]
        : [{ code: 'seen-smoke-clear' }]
    case 'start-collecting':
      return [{ code: 'seen-drip-clear' }]
    case 'collect':
      return [{ code: 'seen-drip-dark' }]
    case 'stop-collecting':
      return [{ code: 'seen-drip-pale' }]
    case 'trial-opening':
      return [{ code: 'any-rise' }]
    default:
      return state.open?.unless ?? []
  }
}

function sureOf(state: KilnState, { call }: Standing): CommandView['sure'] {
  const seen = call !== null && state.calls[call].because.some(({ code }) => code.startsWith('seen-'))
  // who saw the drip knows more than the probes; with fire or wall unheard not everything. That something was logged makes nothing sure
  if (seen) return isSilent(state, 'firebox') || isSilent(state, 'wall') ? 'middle' : 'high'
  if (isBlind(state)) return 'low'
  if (state.advice?.collectWorthPerH !== null && state.advice !== null) return state.advice.sure
  if (mean(state.past.smoke, 10) !== null) return 'middle'
  return 'low'
}

const needed: readonly Role[] = ['firebox', 'wall', 'outlet']
const isSilent = (state: KilnState, role: Role): boolean => mean(state.past[role], 5) === null
const isBlind = (state: KilnState): boolean => needed.some((role) => isSilent(state, role))

/** What cannot be judged, and why: a role that nothing is heard of, a charge that nobody weighed. */
function doubtsOf(state: KilnState): Reason[] {
  const doubts: Reason[] = []
  if (state.facts.sealedAt !== null) doubts.push(...sealedDoubts(state))
  for (const role of needed) if (isSilent(state, role)) doubts.push({ code: `no-${role}` })
  const smoke = smokeDoubt(state)
  // a sealed chimney smokes no more
  if (smoke !== null && state.facts.sealedAt === null) doubts.push(smoke)
  if (chargeMass(state.config, state.facts.charge).assumed)
    doubts.push({ code: 'charge-assumed', value: chargeMass(state.config, state.facts.charge).wetKg })
  return doubts
}

/** Why the smoke is estimated; null where it is measured. A probe that was put in during the firing counts once it has a few minutes behind it. */
function smokeDoubt({ past, channels, config }: KilnState): Reason | null {
  if (mean(past.smoke, 10) !== null) return null
  const fitted = Object.entries(channels).find(([, { role }]) => role === 'smoke')
  if (fitted === undefined)
    return config.prior?.unknowns === undefined ? { code: 'no-smoke-probe' } : { code: 'smoke-as-learnt', value: config.prior.firings }
  const [channel, { track, faultSince }] = fitted
  const speaks = faultSince === null && track.value !== null && track.quality === 'good' && !track.nodeLost
  return { code: speaks ? 'smoke-probe-new' : 'smoke-probe-failed', channel }
}

/** A probe that slowly loses touch reads like a kiln that cools: where nothing inside is measured it is to be pressed on before a gap is made. */
function sealedDoubts({ cooling, calls }: KilnState): Reason[] {
  const doubts = cooling?.doubts ?? []
  if (calls.open.state !== 'due') return doubts
  return doubts.map((doubt) => (doubt.code === 'no-core-probe' ? { code: 'one-wall-probe' } : doubt))
}
