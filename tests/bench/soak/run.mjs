// npm run bench:soak -- [MINUTES-AT-FIELD-LOAD 1] [MINUTES-AT-TEN-TIMES-THAT 10]; release: npm run bench:soak -- 5 150
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { build } from 'vite'
import { ensureBuilt } from '../../../server/launch.mjs'

ensureBuilt()
const out = mkdtempSync(join(resolve('.build'), 'soak-'))
await build({
  configFile: false,
  logLevel: 'warn',
  build: {
    ssr: true,
    outDir: out,
    target: 'node20',
    minify: false,
    rollupOptions: { input: { measure: resolve('tests/bench/soak/measure-main.ts') } },
  },
})
const { status } = spawnSync(process.execPath, [join(out, 'measure.js'), ...process.argv.slice(2)], { stdio: 'inherit' })
rmSync(out, { recursive: true })
process.exitCode = status ?? 1
