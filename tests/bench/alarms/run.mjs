// npm run bench:alarms -- FOLDER... [--each] [--curve]  or  -- --latency [ALARMS]
import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { build } from 'vite'

const args = process.argv.slice(2)
const latency = args.includes('--latency')
mkdirSync('.build', { recursive: true })
const out = mkdtempSync(join(resolve('.build'), 'bench-'))
const input = { measure: resolve(`tests/bench/alarms/${latency ? 'latency' : 'measure'}-main.ts`) }
await build({
  configFile: false,
  logLevel: 'error',
  build: { ssr: true, outDir: out, target: 'node20', minify: false, rollupOptions: { input } },
})
const run = spawnSync(process.execPath, [join(out, 'measure.js'), ...args.filter((arg) => arg !== '--latency')], { stdio: 'inherit' })
rmSync(out, { recursive: true })
process.exit(run.status ?? 1)
