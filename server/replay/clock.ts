import type { Ms } from '../contract/fold.ts'

/** `2026-03-01 08:13`, UTC. */
export const clock = (at: Ms): string => new Date(at).toISOString().slice(0, 16).replace('T', ' ')

/** `08:13`, or with its day where that is another than the one of `first`. */
export const after = (first: Ms, at: Ms): string => (clock(first).slice(0, 10) === clock(at).slice(0, 10) ? clock(at).slice(11) : clock(at))
