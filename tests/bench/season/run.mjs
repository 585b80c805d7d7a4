// node tests/bench/season/run.mjs [FIRINGS] [HOURS-OF-EACH]: memory of a process that serves a year of firings in one file
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { bundle, storageWorker } from '../../support/bundle.mjs'

const out = await bundle({ season: 'tests/bench/season/season-main.ts', ...storageWorker })
const folder = mkdtempSync(join(tmpdir(), 'kiln-season-'))
const [firings = '60', hours = '30'] = process.argv.slice(2)
// filled by one process and served by another, so that the memory of filling is not counted
for (const part of ['fill', 'serve']) {
  const flags = ['--max-semi-space-size=4', join(out, 'season.js'), part, folder, join(out, 'storage-worker.js'), firings, hours]
  spawnSync(process.execPath, flags, { stdio: 'inherit' })
}
rmSync(folder, { recursive: true })
rmSync(out, { recursive: true })
