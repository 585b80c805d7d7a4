import { execFileSync } from 'node:child_process'
import { cpSync, mkdtempSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { build } from 'vite'

/**
 * Bundles `entry` beside a copy of the built app, laid out as the repository is, so that a build by somebody else while it runs takes
 * nothing away. Returns the folder to remove afterwards and the program in it.
 */
export async function snapshot(entry) {
  execFileSync(process.execPath, ['server/launch.mjs', '--build'], { stdio: 'inherit' })
  const folder = mkdtempSync(resolve('.build', 'snapshot-'))
  cpSync(resolve('.build', 'app'), join(folder, '.build', 'app'), { recursive: true })
  cpSync(resolve('server', 'simulator', 'demo'), join(folder, 'server', 'simulator', 'demo'), { recursive: true })
  const outDir = join(folder, 'tests', 'run')
  await build({
    configFile: false,
    logLevel: 'error',
    build: { ssr: true, outDir, target: 'node20', minify: false, rollupOptions: { input: { program: resolve(entry) } } },
  })
  return { folder, program: join(outDir, 'program.js') }
}
