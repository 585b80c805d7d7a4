import { fromBase64, toBase64 } from './base64.ts'
import type { Known } from './session.ts'

/** One text for the frozen intake state and what a new session is told first; it travels in the header of an export. */
export function freezeOrigin(intake: Uint8Array, known: Known): Uint8Array {
  return new TextEncoder().encode(JSON.stringify({ intake: toBase64(intake), known: [...known] }))
}

export function thawOrigin(bytes: Uint8Array): { intake: Uint8Array; known: Known } {
  const { intake, known } = JSON.parse(new TextDecoder().decode(bytes)) as { intake: string; known: [string, never][] }
  return { intake: fromBase64(intake), known: new Map(known) }
}

/** Both folds' versions in one number: an origin of other folds cannot be continued. */
export function originVersion(folds: { intake: { version: number }; kiln: { version: number } }): number {
  return folds.intake.version * 1000 + folds.kiln.version
}
