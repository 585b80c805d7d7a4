import type { Checkpoint } from '../storage/store.ts'
import { Driver } from './driver.ts'
import type { Folds, SiteState } from './driver.ts'
import { originVersion } from './origin.ts'
import type { Session } from './session.ts'

/** One name for the whole site: its parts must stand at the same entry. */
const name = 'site'
const shape = 2

/** Four bytes of length (big-endian), the site as JSON, then the parts that are bytes; the JSON says at each place how many. */
type FrozenSession = Omit<Session<number>, 'origin'> & { origin: Omit<Session<number>['origin'], 'bytes'> & { bytes: number } }
type Frozen = Omit<SiteState<number, never>, 'sessions' | 'known' | 'acts'> & {
  sessions: FrozenSession[]
  known: [string, never][]
  acts: string[]
}

function siteVersion<I, K>(folds: Folds<I, K>): number {
  return shape + 100 * originVersion(folds)
}

export function freezeSite<I, K>(folds: Folds<I, K>, state: SiteState<I, K>): Checkpoint {
  const parts: Uint8Array[] = []
  const put = (part: Uint8Array): number => {
    parts.push(part)
    return part.length
  }
  const frozen: Frozen = {
    ...state,
    intake: put(folds.intake.freeze(state.intake)),
    sessions: [...state.sessions.values()].map((session) => ({
      ...session,
      state: put(folds.kiln.freeze(session.state)),
      origin: { ...session.origin, bytes: put(session.origin.bytes) },
    })),
    known: [...state.known] as [string, never][],
    acts: [...state.acts],
  }
  const text = new TextEncoder().encode(JSON.stringify(frozen))
  const length = new Uint8Array(4)
  new DataView(length.buffer).setUint32(0, text.length)
  return { name, seq: state.seq, at: state.at, version: siteVersion(folds), bytes: new Uint8Array(Buffer.concat([length, text, ...parts])) }
}

/** The driver as it stood at the newest checkpoint of these folds; null where there is none that they can read. */
export function thawSite<I, K>(folds: Folds<I, K>, checkpoints: readonly Checkpoint[]): Driver<I, K> | null {
  const found = checkpoints.find((checkpoint) => checkpoint.name === name && checkpoint.version === siteVersion(folds))
  if (!found) return null
  const { bytes } = found
  let from = 4 + new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0)
  const frozen = JSON.parse(new TextDecoder().decode(bytes.subarray(4, from))) as Frozen
  // taken in the order in which they were put
  const next = (length: number): Uint8Array => bytes.slice(from, (from += length))
  const intake = folds.intake.thaw(next(frozen.intake))
  const sessions = frozen.sessions.map((session): [string, Session<K>] => [
    session.config.kiln,
    {
      ...session,
      state: folds.kiln.thaw(next(session.state)),
      origin: { ...session.origin, bytes: next(session.origin.bytes) },
    },
  ])
  return new Driver(folds, {
    ...frozen,
    intake,
    sessions: new Map(sessions),
    known: new Map(frozen.known),
    acts: new Set(frozen.acts),
  })
}
