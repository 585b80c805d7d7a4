// npm run fuzz -- [--seconds 60] [--seed N] [--door PART-OF-A-NAME]
// Changed inputs at every decoder until the time is over; status 1 and the inputs when a promise was broken. The same seed, the same inputs.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { build } from 'vite'
import { ensureBuilt } from '../../server/launch.mjs'

ensureBuilt()
const out = mkdtempSync(join(resolve('.build'), 'fuzz-'))
await build({
  configFile: false,
  logLevel: 'warn',
  build: {
    ssr: true,
    outDir: out,
    target: 'node20',
    minify: false,
    rollupOptions: { input: { fuzz: resolve('tests/fuzz/fuzz-main.ts') } },
  },
})
const { status } = spawnSync(process.execPath, [join(out, 'fuzz.js'), ...process.argv.slice(2)], { stdio: 'inherit' })
rmSync(out, { recursive: true })
process.exitCode = status ?? 1
