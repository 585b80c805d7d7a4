import { spawnSync } from 'node:child_process'
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { checkAll } from '../../server/storage/sqlite/check.ts'
import { openDatabase } from '../../server/storage/sqlite/engine.ts'
import { dataFolder } from '../contract/data-folder.ts'
import { bundleRig, mayTrace } from './rig/programs.ts'
import { chances, Disk, stepsOf, tracedCalls } from './rig/trace.ts'

const wanted = Number(process.env['CRASH_STATES'] ?? 400)
const { folder, remove } = dataFolder()
let rig = ''
beforeAll(async () => {
  rig = await bundleRig('crash')
})
afterAll(async () => {
  rmSync(dirname(rig), { recursive: true })
  await remove()
})

it.skipIf(!mayTrace())(
  `after any of ${wanted} power cuts between two system calls nothing acknowledged is lost (F3; Debian package strace)`,
  async () => {
    const data = join(folder, 'data')
    mkdirSync(data)
    const trace = join(folder, 'trace')
    spawnSync('strace', [
      '-f',
      '-y',
      '-xx',
      '-s',
      '100000',
      '-e',
      `trace=${tracedCalls}`,
      '-o',
      trace,
      process.execPath,
      rig,
      data,
      '40',
      '5',
    ])
    const steps = stepsOf(readFileSync(trace, 'latin1'), data)
    expect(steps.filter((step) => step.do === 'acknowledged')).toHaveLength(40)

    const next = chances(20261125)
    const file = join(folder, 'cut', 'kiln.db')
    const lost: string[] = []
    let states = 0
    const judge = (files: Map<string, Buffer>, acknowledged: number, where: string) => {
      states++
      rmSync(dirname(file), { recursive: true, force: true })
      mkdirSync(dirname(file))
      for (const [name, bytes] of files) if (!name.endsWith('-shm')) writeFileSync(join(dirname(file), name), bytes)
      try {
        const database = openDatabase(file, 'write')
        try {
          if (acknowledged === 0) return
          checkAll(database)
          const found = Number(database.prepare('SELECT count(*) AS n FROM journal WHERE seq <= ?').get(acknowledged)?.['n'])
          if (found !== acknowledged) lost.push(`${where}: ${found} of ${acknowledged}`)
        } finally {
          database.close()
        }
      } catch (error) {
        lost.push(`${where}: ${String(error)}`)
      }
    }
    // the same cuts again with other chances until there are as many states as wanted
    while (states < wanted) {
      const disk = new Disk()
      let acknowledged = 0
      const every = Math.max(1, Math.floor((steps.length * 4) / (wanted - states)))
      for (const [index, step] of steps.entries()) {
        disk.take(step)
        if (step.do === 'acknowledged') acknowledged = step.seq
        if (index % every !== 0 || states >= wanted) continue
        for (const { how, files } of disk.cuts(next)) judge(files, acknowledged, `after call ${index}, ${how}`)
        // statements let go of their closed files only when the loop of events comes round
        await new Promise((resolve) => setImmediate(resolve))
      }
    }
    console.info(`crash states: ${states} states of ${steps.length} system calls, ${lost.length} lost or damaged`)
    expect(lost).toEqual([])
  },
  900_000,
)
