// node tests/moments/run.mjs [NAMES,OF,SOME [FOLDER]]: takes the ten pictures of the real screen anew.
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { build } from 'vite'

const [only = '', folder = 'tests/moments'] = process.argv.slice(2)
execFileSync(process.execPath, ['server/launch.mjs', '--build'], { stdio: 'inherit' })
// the bundle finds the repository two folders up, as its source does
const out = mkdtempSync(resolve('.build', 'moments-'))
await build({
  configFile: false,
  logLevel: 'error',
  build: {
    ssr: true,
    outDir: out,
    target: 'node20',
    minify: false,
    rollupOptions: { input: { pictures: resolve('tests/moments/pictures-main.ts') } },
  },
})
const ended = spawnSync(process.execPath, [join(out, 'pictures.js'), resolve(folder), only], { stdio: 'inherit' })
rmSync(out, { recursive: true })
process.exitCode = ended.status ?? 1
