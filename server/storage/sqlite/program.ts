import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { StoreProblem } from '../store.ts'

/** The built thread beside the running program; from TypeScript sources (tests) the one of the last build. */
export function storageProgram(from: string = import.meta.url): string {
  const file = 'storage-worker.js'
  for (let folder = dirname(fileURLToPath(from)); ; folder = dirname(folder)) {
    const found = [join(folder, file), join(folder, '.build', 'app', 'server', file)].find((path) => existsSync(path))
    if (found !== undefined) return found
    if (folder === dirname(folder)) throw new StoreProblem('unknown', `${file} is not built`)
  }
}
