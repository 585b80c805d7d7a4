// node tests/bench/intake/run.mjs [ROUNDS]
// A firing of 40 hours, a pack of three bent channels every 10 s, through the intake fold and a track of each channel.
import { mkdtempSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { build } from 'vite'

const out = mkdtempSync(join(resolve('.build'), 'bench-'))
const rollupOptions = { input: { firing: resolve('tests/bench/intake/firing-main.ts') } }
await build({ configFile: false, logLevel: 'warn', build: { ssr: true, outDir: out, target: 'node20', minify: false, rollupOptions } })
await import(join(out, 'firing.js'))
rmSync(out, { recursive: true })
