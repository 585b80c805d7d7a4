import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'

/** The service's storage thread, for programs that open a store of their own. */
export const storageWorker = { 'storage-worker': 'server/storage/sqlite/worker.ts' }

/**
 * Bundles programs of the tests, for Node, into a new folder beside the build. (A program of its own can be measured, killed and traced.)
 * @param programs name → source file from the repository's root; each becomes `NAME.js`
 * @param out folder to use in place of a new one
 * @returns the folder, to be removed afterwards
 */
export async function bundle(programs, out) {
  // only now: who asks for help does not wait for it
  const { build } = await import('vite')
  mkdirSync('.build', { recursive: true })
  const outDir = out ?? mkdtempSync(join(resolve('.build'), 'bundle-'))
  const input = Object.fromEntries(Object.entries(programs).map(([name, file]) => [name, resolve(file)]))
  await build({
    configFile: false,
    logLevel: 'error',
    build: { ssr: true, outDir, target: 'node20', minify: false, rollupOptions: { input } },
  })
  return outDir
}

/** Bundles the programs, runs the first of them and removes all. @param argsIn the arguments, given the folder. @returns its exit status */
export async function runBundled(programs, argsIn = () => process.argv.slice(2), flags = []) {
  const out = await bundle(programs)
  try {
    const [program] = Object.keys(programs)
    return spawnSync(process.execPath, [...flags, join(out, `${program}.js`), ...argsIn(out)], { stdio: 'inherit' }).status ?? 1
  } finally {
    rmSync(out, { recursive: true })
  }
}
