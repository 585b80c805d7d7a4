import type { ActId, KilnConfig, KilnId, Ms } from '../contract/fold.ts'
import type { Phase } from '../contract/vocabulary.ts'
import type { KilnInput } from '../domain/intake/types.ts'
import { startPace } from './throttle.ts'
import type { Pace } from './throttle.ts'

/**
 * The run of one kiln's fold from an origin on. It becomes a firing when it opens; while nobody fires it starts anew
 * at every full hour, so that an export begins close before the firing.
 */
export interface Session<K> {
  /** Id of the firing that it becomes. */
  id: string
  state: K
  config: KilnConfig
  origin: Origin
  openedAt: Ms | null
  /** A trial opening was logged: the next loading or lighting is another firing. */
  triedOpen: boolean
  /** The phase told last. */
  phase: Phase
  pace: Pace
  /** Journal entry that the numbers `n` of the outputs count from. */
  cause: number
  nextN: number
  /** Samples of this kiln since the origin. */
  samples: number
}

/** What a replay needs to begin where the session began. */
export interface Origin {
  /** Last journal entry before it, and the last tick before it. */
  seq: number
  at: Ms
  config: KilnConfig
  /** Frozen intake state and what the fold was told first, see `known`. */
  bytes: Uint8Array
}

/** What every new session of the site is told first: how channels report, which nodes are there, what fails. By key, newest wins. */
export type Known = Map<string, Extract<KilnInput, { kind: 'channel' | 'node' | 'health' }>>

export function remember(known: Known, input: KilnInput): void {
  if (input.kind === 'channel') known.set(`channel ${input.channel}`, input)
  else if (input.kind === 'node') known.set(`node ${input.node}`, input)
  else if (input.kind === 'health') {
    if (input.on) known.set(`health ${input.code}`, input)
    else known.delete(`health ${input.code}`)
  }
}

/** `kiln-1-20260301T073000` from the origin's own time: the same in every replay. */
export function sessionId(kiln: KilnId, at: Ms, seq: number): string {
  const stamp = new Date(at).toISOString().slice(0, 19).replace(/[-:]/g, '')
  return `${kiln}-${stamp}-${seq}`
}

export function makeSession<K>(state: K, config: KilnConfig, origin: Origin): Session<K> {
  return {
    id: sessionId(config.kiln, origin.at, origin.seq),
    state,
    config,
    origin,
    openedAt: null,
    triedOpen: false,
    phase: 'idle',
    pace: startPace(),
    cause: origin.seq,
    nextN: 0,
    samples: 0,
  }
}

/** Ids of acts that were taken, newest last; enough of them to answer a tablet that sends again after a night offline. */
export function rememberAct(ids: Set<ActId>, id: ActId): void {
  ids.add(id)
  if (ids.size > 2000) for (const oldest of ids) return void ids.delete(oldest)
}
