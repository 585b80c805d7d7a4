// node tests/bench/estimate/run.mjs
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { build } from 'vite'

const out = mkdtempSync(join(resolve('.build'), 'bench-'))
await build({
  configFile: false,
  logLevel: 'error',
  build: {
    ssr: true,
    outDir: out,
    target: 'node20',
    minify: false,
    rollupOptions: { input: { measure: resolve('tests/bench/estimate/measure-main.ts') } },
  },
})
const { status } = spawnSync(process.execPath, [join(out, 'measure.js')], { stdio: 'inherit' })
rmSync(out, { recursive: true })
process.exit(status ?? 1)
