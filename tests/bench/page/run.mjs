// npm run bench:page [-- SLOWED [SECONDS]]: the live page with a reading a second of each probe, with the browser slowed six times (or SLOWED times).
import { spawnSync } from 'node:child_process'
import { rmSync } from 'node:fs'
import { snapshot } from '../../moments/snapshot.mjs'
import { explained } from '../../support/explained.mjs'

explained(import.meta.url)

const taken = await snapshot('tests/bench/page/measure-main.ts')
const ended = spawnSync(process.execPath, [taken.program, ...process.argv.slice(2)], { stdio: 'inherit' })
rmSync(taken.folder, { recursive: true })
process.exitCode = ended.status ?? 1
