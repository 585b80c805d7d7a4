import type { Checkpoint } from '../storage/store.ts'
import { fromBase64, toBase64 } from './base64.ts'
import { Driver } from './driver.ts'
import type { Folds, SiteState } from './driver.ts'
import type { Session } from './session.ts'

/** One name for the whole site: its parts must stand at the same entry. */
const name = 'site'
const shape = 1

type FrozenSession = Omit<Session<string>, 'origin'> & { origin: Omit<Session<string>['origin'], 'bytes'> & { bytes: string } }
type Frozen = Omit<SiteState<string, never>, 'sessions' | 'known' | 'acts'> & {
  sessions: FrozenSession[]
  known: [string, never][]
  acts: string[]
}

export function siteVersion<I, K>(folds: Folds<I, K>): number {
  return shape + 100 * (folds.intake.version * 1000 + folds.kiln.version)
}

export function freezeSite<I, K>(folds: Folds<I, K>, state: SiteState<I, K>): Checkpoint {
  const frozen: Frozen = {
    ...state,
    intake: toBase64(folds.intake.freeze(state.intake)),
    sessions: [...state.sessions.values()].map((session) => ({
      ...session,
      state: toBase64(folds.kiln.freeze(session.state)),
      origin: { ...session.origin, bytes: toBase64(session.origin.bytes) },
    })),
    known: [...state.known] as [string, never][],
    acts: [...state.acts],
  }
  const bytes = new TextEncoder().encode(JSON.stringify(frozen))
  return { name, seq: state.seq, at: state.at, version: siteVersion(folds), bytes }
}

/** The driver as it stood at the newest checkpoint of these folds; null where there is none that they can read. */
export function thawSite<I, K>(folds: Folds<I, K>, checkpoints: readonly Checkpoint[]): Driver<I, K> | null {
  const found = checkpoints.find((checkpoint) => checkpoint.name === name && checkpoint.version === siteVersion(folds))
  if (!found) return null
  const frozen = JSON.parse(new TextDecoder().decode(found.bytes)) as Frozen
  const sessions = frozen.sessions.map((session): [string, Session<K>] => [
    session.config.kiln,
    {
      ...session,
      state: folds.kiln.thaw(fromBase64(session.state)),
      origin: { ...session.origin, bytes: fromBase64(session.origin.bytes) },
    },
  ])
  return new Driver(folds, {
    ...frozen,
    intake: folds.intake.thaw(fromBase64(frozen.intake)),
    sessions: new Map(sessions),
    known: new Map(frozen.known),
    acts: new Set(frozen.acts),
  })
}
