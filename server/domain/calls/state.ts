import type { Ms, Reason } from '../../contract/fold.ts'
import type { CallView } from '../../contract/live.ts'
import { calls, type Call } from '../../contract/vocabulary.ts'

export type CallState = Omit<CallView, 'call'>
export type CallStates = Record<Call, CallState>

export function startCalls(at: Ms): CallStates {
  const fresh = (): CallState => ({ state: 'not-yet', since: at, because: [], forecast: null })
  return { 'stop-feeding': fresh(), 'start-collecting': fresh(), 'stop-collecting': fresh(), seal: fresh(), open: fresh() }
}

/** What the rules propose for one call: due, taken back, or nothing new. */
export interface Proposal {
  due: boolean
  withdraw: boolean
  because: Reason[]
}
export type Proposals = Partial<Record<Call, Proposal>>

export interface CallChange {
  call: Call
  state: 'due' | 'done' | 'withdrawn'
  because: Reason[]
}

/** The operator's own time of each call, as logged. */
export type Done = Partial<Record<Call, Ms>>

/** not-yet -> due -> done | withdrawn (-> due). What was done stands; a correction of the log takes it back. */
export function stepCalls(states: CallStates, proposals: Proposals, done: Done, at: Ms): CallChange[] {
  const changes: CallChange[] = []
  for (const call of calls) {
    const state = states[call]
    const doneAt = done[call]
    if (doneAt !== undefined) {
      if (state.state !== 'done') changes.push(turn(state, call, 'done', [{ code: 'logged' }], doneAt))
      continue
    }
    if (state.state === 'done') {
      state.state = 'not-yet'
      state.since = at
      state.because = []
    }
    const proposal = proposals[call]
    if (proposal === undefined) continue
    if (state.state !== 'due' && proposal.due) changes.push(turn(state, call, 'due', proposal.because, at))
    else if (state.state === 'due' && proposal.withdraw) changes.push(turn(state, call, 'withdrawn', proposal.because, at))
  }
  return changes
}

function turn(state: CallState, call: Call, to: 'due' | 'done' | 'withdrawn', because: Reason[], since: Ms): CallChange {
  state.state = to
  state.since = since
  state.because = because
  if (to !== 'withdrawn') state.forecast = null
  return { call, state: to, because }
}
