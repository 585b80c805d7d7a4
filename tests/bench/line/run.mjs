// npm run bench:line [-- [SECONDS] [DEMO-SECONDS]]: the line from a node to the page, the start and the memory of the built service, each
// beside bare parts measured in the same run. Ends with 1 when a figure is missed.
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { build } from 'vite'

execFileSync(process.execPath, ['server/launch.mjs', '--build'], { stdio: 'inherit' })
const out = mkdtempSync(join(resolve('.build'), 'bench-'))
const input = Object.fromEntries(['measure', 'bare'].map((name) => [name, resolve('tests/bench/line', `${name}-main.ts`)]))
await build({
  configFile: false,
  logLevel: 'error',
  build: { ssr: true, outDir: out, target: 'node20', minify: false, rollupOptions: { input } },
})
const ended = spawnSync(process.execPath, [join(out, 'measure.js'), join(out, 'bare.js'), ...process.argv.slice(2)], { stdio: 'inherit' })
rmSync(out, { recursive: true })
process.exitCode = ended.status ?? 1
