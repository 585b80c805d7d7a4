/** Builds `.build` when a source is newer than it. Rejects when the build fails. */
export function ensureBuilt(): Promise<void>
