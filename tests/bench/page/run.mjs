// npm run bench:page [-- SLOWED]: the live page after twelve hours of a firing, with the browser slowed six times (or SLOWED times).
import { spawnSync } from 'node:child_process'
import { rmSync } from 'node:fs'
import { snapshot } from '../../moments/snapshot.mjs'

const taken = await snapshot('tests/bench/page/measure-main.ts')
const ended = spawnSync(process.execPath, [taken.program, process.argv[2] ?? '6'], { stdio: 'inherit' })
rmSync(taken.folder, { recursive: true })
process.exitCode = ended.status ?? 1
