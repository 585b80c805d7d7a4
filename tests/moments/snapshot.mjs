import { execFileSync } from 'node:child_process'
import { cpSync, mkdtempSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { bundle } from '../support/bundle.mjs'

/**
 * Bundles `entry` beside a copy of the built app, laid out as the repository is, so that a build by somebody else while it runs takes
 * nothing away. Returns the folder to remove afterwards and the program in it.
 */
export async function snapshot(entry) {
  execFileSync(process.execPath, ['server/launch.mjs', '--build'], { stdio: 'inherit' })
  const folder = mkdtempSync(resolve('.build', 'snapshot-'))
  cpSync(resolve('.build', 'app'), join(folder, '.build', 'app'), { recursive: true })
  cpSync(resolve('server', 'simulator', 'demo'), join(folder, 'server', 'simulator', 'demo'), { recursive: true })
  const outDir = await bundle({ program: entry }, join(folder, 'tests', 'run'))
  return { folder, program: join(outDir, 'program.js') }
}
