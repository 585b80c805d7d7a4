/** Builds `.build` when a source is newer than it. Throws when the build fails. */
export function ensureBuilt(): void
