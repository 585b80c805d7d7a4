import type { Charge, KilnConfig } from '../../../contract/fold.ts'
import type { DripLook, SmokeLook } from '../../../contract/vocabulary.ts'
import type { Evidence, GridReadings } from '../types.ts'
import { emptyMemory, light, type Memory, rememberMinute } from './memory.ts'
import { type Network, runNetwork, type Shares } from './network.ts'
import { signsOf } from './signs.ts'

// The learned judge: a second opinion beside the physical ensemble. It has seen thousands of simulated firings of kilns that are
// not ours, each cut into minutes, and says what share of the next quarter of an hour's condensate is good, watery or tar-laden.

/** Grid steps of 10 s in a minute. */
const gridPerMinute = 6
/** The value is smoothed over this time: shorter than a bottle, longer than the swings of fire and cloths. */
const smoothingMinutes = 12

const drips: readonly DripLook[] = ['none', 'clear', 'pale', 'amber', 'dark', 'black']
const smokes: readonly SmokeLook[] = ['none', 'white', 'yellow', 'blue', 'clear']
const channels = ['fireboxC', 'wallC', 'outletC', 'smokeC'] as const

export interface JudgeState {
  memory: Memory
  /** Sums and counts of the minute that is being gathered, in the order of `channels`. */
  sums: number[]
  counts: number[]
  steps: number
  fed: boolean
  wetted: boolean
  drip: number
  smoke: number
  shares: Shares | null
  /** Worth of collecting, in kilograms of good a kilogram that comes, smoothed. */
  worth: number | null
}

export function startJudge(charge: Charge): JudgeState {
  return {
    memory: emptyMemory(charge),
    sums: [0, 0, 0, 0],
    counts: [0, 0, 0, 0],
    steps: 0,
    fed: false,
    wetted: false,
    drip: 0,
    smoke: 0,
    shares: null,
    worth: null,
  }
}

/** One grid step of 10 s. Changes `state`. */
export function stepJudge(
  state: JudgeState,
  readings: GridReadings,
  evidence: readonly Evidence[],
  networks: readonly Network[],
  worth: KilnConfig['worth'],
): void {
  for (const seen of evidence) takeEvidence(state, seen)
  channels.forEach((channel, i) => {
    const value = readings[channel]
    if (value === null) return
    state.sums[i] = (state.sums[i] ?? 0) + value
    state.counts[i] = (state.counts[i] ?? 0) + 1
  })
  if (++state.steps < gridPerMinute) return
  closeMinute(state)
  if (state.memory.litMinute !== null && state.memory.smoothWall.length > 0) judgeMinute(state, networks, worth)
}

function takeEvidence(state: JudgeState, seen: Evidence): void {
  switch (seen.kind) {
    case 'lit':
      light(state.memory)
      break
    case 'fed':
      state.fed = true
      break
    case 'wetted':
      state.wetted = true
      break
    case 'drip':
      state.drip = Math.max(drips.indexOf(seen.look), 0)
      break
    case 'smoke':
      state.smoke = Math.max(smokes.indexOf(seen.look), 0)
      break
    case 'charge':
      state.memory.charge = { ...state.memory.charge, ...seen.charge }
      break
    default:
      break
  }
}

function closeMinute(state: JudgeState): void {
  const mean = (i: number): number | null => ((state.counts[i] ?? 0) > 0 ? (state.sums[i] ?? 0) / (state.counts[i] ?? 1) : null)
  rememberMinute(state.memory, {
    fireboxC: mean(0),
    wallC: mean(1),
    outletC: mean(2),
    smokeC: mean(3),
    fed: state.fed,
    wetted: state.wetted,
    drip: state.drip,
    smoke: state.smoke,
  })
  state.sums.fill(0)
  state.counts.fill(0)
  state.steps = 0
  state.fed = false
  state.wetted = false
  state.drip = 0
  state.smoke = 0
}

function judgeMinute(state: JudgeState, networks: readonly Network[], worth: KilnConfig['worth']): void {
  const signs = signsOf(state.memory)
  const shares: Shares = [0, 0, 0]
  for (const network of networks) runNetwork(network, signs).forEach((share, c) => (shares[c] = (shares[c] ?? 0) + share / networks.length))
  const value = shares[0] * worth.good + shares[1] * worth.watery + shares[2] * worth.tarry
  const sinceLit = state.memory.minute - (state.memory.litMinute ?? 0)
  state.shares = shares
  state.worth = state.worth === null || sinceLit < 2 ? value : state.worth + (1 - Math.exp(-1 / smoothingMinutes)) * (value - state.worth)
}
