// node tests/bench/curve/run.mjs [OTHER-FIRINGS]
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { build } from 'vite'

const out = mkdtempSync(join(resolve('.build'), 'bench-'))
const input = { measure: resolve('tests/bench/curve/measure-main.ts'), 'storage-worker': resolve('server/storage/sqlite/worker.ts') }
await build({
  configFile: false,
  logLevel: 'warn',
  build: { ssr: true, outDir: out, target: 'node20', minify: false, rollupOptions: { input } },
})
spawnSync(process.execPath, [join(out, 'measure.js'), join(out, 'storage-worker.js'), process.argv[2] ?? '20'], { stdio: 'inherit' })
rmSync(out, { recursive: true })
