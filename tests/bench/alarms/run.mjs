// npm run bench:alarms -- FOLDER... [--each] [--curve]  or  -- --latency [ALARMS] [CONDITION...]  or  -- --dead [BUZZERS]  or  -- --plot
import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { build } from 'vite'
import { plot } from './plot.mjs'

const args = process.argv.slice(2)
if (args.includes('--plot')) {
  plot(import.meta.dirname)
  process.exit(0)
}
const part = ['latency', 'dead'].find((name) => args.includes(`--${name}`)) ?? 'measure'
const built = part === 'measure' ? 0 : spawnSync(process.execPath, ['server/launch.mjs', '--build'], { stdio: 'inherit' }).status
if (built !== 0) process.exit(built ?? 1)
mkdirSync('.build', { recursive: true })
const out = mkdtempSync(join(resolve('.build'), 'bench-'))
const names = { measure: ['measure'], latency: ['latency', 'around'], dead: ['dead'] }[part]
const input = Object.fromEntries(names.map((name) => [name, resolve(`tests/bench/alarms/${name}-main.ts`)]))
await build({
  configFile: false,
  logLevel: 'error',
  build: { ssr: true, outDir: out, target: 'node20', minify: false, rollupOptions: { input } },
})
const run = spawnSync(process.execPath, [join(out, `${part}.js`), ...args.filter((arg) => arg !== `--${part}`)], { stdio: 'inherit' })
rmSync(out, { recursive: true })
process.exit(run.status ?? 1)
