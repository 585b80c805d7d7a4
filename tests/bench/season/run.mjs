// npm run bench:season [-- [FIRINGS] [HOURS-OF-EACH]]: memory of a process that serves a year of firings in one file
import { spawn, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { bundle, storageWorker } from '../../support/bundle.mjs'
import { explained } from '../../support/explained.mjs'

explained(import.meta.url)

const out = await bundle({ season: 'tests/bench/season/season-main.ts', ...storageWorker })
const folder = mkdtempSync(join(tmpdir(), 'kiln-season-'))
const [firings = '60', hours = '30'] = process.argv.slice(2)
const program = (flags, part) => [...flags, join(out, 'season.js'), part, folder, join(out, 'storage-worker.js'), firings, hours]
// the flags of `npm start`
const ofService = JSON.parse(readFileSync('package.json', 'utf8'))
  .scripts.start.split(' ')
  .filter((word) => word.startsWith('--'))
spawnSync(process.execPath, program([], 'fill'), { stdio: 'inherit' })
const service = spawn(process.execPath, program(ofService, 'serve'), { stdio: ['pipe', 'pipe', 'inherit'] })
const lines = createInterface(service.stdout)[Symbol.asyncIterator]()
const { value: url } = await lines.next()
spawnSync(process.execPath, program([], url), { stdio: 'inherit' })
service.stdin.end()
for await (const line of lines) console.log(line)
process.exitCode = service.exitCode ?? 0
rmSync(folder, { recursive: true })
rmSync(out, { recursive: true })
