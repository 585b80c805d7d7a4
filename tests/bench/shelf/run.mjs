// node tests/bench/shelf/run.mjs [FIRINGS] [READINGS-OF-EACH]
import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { build } from 'vite'

mkdirSync('.build', { recursive: true })
const out = mkdtempSync(join(resolve('.build'), 'bench-'))
const input = { measure: resolve('tests/bench/shelf/measure-main.ts'), 'storage-worker': resolve('server/storage/sqlite/worker.ts') }
await build({
  configFile: false,
  logLevel: 'error',
  build: { ssr: true, outDir: out, target: 'node20', minify: false, rollupOptions: { input } },
})
const [firings = '2000', readings = '7500'] = process.argv.slice(2)
spawnSync(process.execPath, [join(out, 'measure.js'), join(out, 'storage-worker.js'), firings, readings], { stdio: 'inherit' })
rmSync(out, { recursive: true })
