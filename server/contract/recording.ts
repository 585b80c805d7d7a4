import type { ActId, Charge, KilnConfig } from './fold.ts'
import type { Action } from './actions.ts'
import type { HealthCode, Role } from './vocabulary.ts'

/** First line of a recording file (JSON Lines, version 1). Anything but `recording` may be missing. */
export interface RecordingHeader {
  recording: 1
  title?: string
  kiln?: { volumeL?: number; cover?: string; way?: string }
  charge?: Charge
  roles?: Record<string, Role>
  demo?: boolean
  /** What the folds started with; present in an export of ours, so that a replay gives the same lines. */
  start?: { at: string; seq: number; config: KilnConfig; intake: string; version: number }
}

/** The other lines, in order of arrival. */
export type RecordingLine =
  | { at: string; topic: string; payload: unknown; retained?: boolean }
  /** A payload that is no JSON, in base64. */
  | { at: string; topic: string; bytes: string; retained?: boolean }
  | ({ at: string; id?: string; doneAt?: string; corrects?: string } & Action)
  | { at: string; config: KilnConfig }
  | { at: string; health: HealthCode; on: boolean }

/** After all lines: a glass as it was photographed, named by the act that logged it. No replay looks at it. */
export interface RecordedPicture {
  picture: ActId
  type: 'image/jpeg' | 'image/webp'
  base64: string
}
