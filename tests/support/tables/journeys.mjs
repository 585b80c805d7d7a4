// npm run journeys: what a newcomer and the owner of a lot need, counted by the journeys of the tests in a real browser; status 1 beyond a limit.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { explained } from '../explained.mjs'

explained(import.meta.url)

const folder = mkdtempSync(join(tmpdir(), 'figures-'))
const file = join(folder, 'figures')
writeFileSync(file, '')
const files = ['tests/browser/first-run.test.ts', 'tests/browser/rest/life-of-a-lot.test.ts']
const run = spawnSync('npx', ['vitest', 'run', '--config', 'tests/config/vitest.config.ts', ...files], {
  env: { ...process.env, FIGURES: file },
  encoding: 'utf8',
})
const figures = readFileSync(file, 'utf8')
process.stdout.write(figures)
const touches = Number(/first run: .* in (\d+) touches/.exec(figures)?.[1] ?? NaN)
// somebody who reads each screen takes longer than a script; 20 s for a touch is slow (own judgement)
console.log(`first run at 20 s a touch: ${((touches * 20) / 60).toFixed(1)} min (limit: 5 min); each journey at most 12 touches`)
if (run.status !== 0) console.log(run.stdout.split('\n').slice(-40).join('\n'))
process.exitCode = run.status === 0 && touches * 20 <= 300 ? 0 : 1
rmSync(folder, { recursive: true })
