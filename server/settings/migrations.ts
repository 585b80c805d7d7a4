import { settingsVersion } from './schema.ts'

type Plain = Record<string, unknown>

/** Step n brings a file of version n to version n + 1. A step is never changed once it was released. */
const steps: readonly ((old: Plain) => Plain)[] = [
  // 0: written by hand, without a version
  (old) => ({ version: 1, ...old }),
]

/** The settings as the newest version writes them; null where the file is newer than this program. */
export function migrated(old: Plain): { settings: Plain; from: number } | null {
  const from = typeof old.version === 'number' ? old.version : 0
  if (from > settingsVersion) return null
  const settings = steps.slice(from).reduce((now, step, index) => ({ ...step(now), version: from + index + 1 }), old)
  return { settings, from }
}
