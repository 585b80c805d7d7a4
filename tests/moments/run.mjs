// npm run moments [-- NAMES,OF,SOME [FOLDER]]: takes the pictures of the real screen anew, and ends with 1 where something is wrong on one of them.
import { spawnSync } from 'node:child_process'
import { rmSync } from 'node:fs'
import { resolve } from 'node:path'
import { snapshot } from './snapshot.mjs'
import { explained } from '../support/explained.mjs'

explained(import.meta.url)

const [only = '', folder = 'tests/moments'] = process.argv.slice(2)
const taken = await snapshot('tests/moments/pictures-main.ts')
const ended = spawnSync(process.execPath, [taken.program, resolve(folder), only], { stdio: 'inherit' })
rmSync(taken.folder, { recursive: true })
process.exitCode = ended.status ?? 1
