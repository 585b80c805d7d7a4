import { mkdirSync, rmdirSync, rmSync, existsSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { builtProgram } from '../../contract/built.ts'
import { dataFolder, sqliteIn } from '../../contract/data-folder.ts'
import { readAll } from '../../contract/store.contract.ts'
import { Load } from '../rig/load.ts'
import { bundleRig, startReady } from '../rig/programs.ts'

// F21 of the handbook's table (reliability, 8): the memory runs out under load, by the engine's own limit and by the system's.

let recorder = ''
beforeAll(async () => {
  recorder = await bundleRig('recorder')
})
afterAll(() => rmSync(dirname(recorder), { recursive: true }))

/** @param before what runs the program within its limit @param heap flag of the engine */
async function runOut(before: string[]): Promise<number | string> {
  const { folder, remove } = dataFolder()
  const args = [folder, builtProgram('storage-worker'), '0']
  const running = await startReady(recorder, args, before)
  const load = new Load('m')
  load.start(running.port, 5, 5)
  await load.until(50)
  running.child.kill('SIGUSR2')
  const end = await running.ended
  load.stop()
  const again = await startReady(recorder, args)
  const later = new Load('l')
  later.start(again.port, 2, 2)
  await later.until(20)
  later.stop()
  again.child.kill('SIGTERM')
  expect(await again.ended).toBe(0)
  const store = sqliteIn(folder)
  const { opening } = await store.start()
  const stored = new Set((await readAll(store)).map((each) => Buffer.from(each.payload).toString()))
  await store.stop()
  await remove()
  expect(opening.setAside).toBeNull()
  expect(later.acknowledged.size).toBeGreaterThan(0)
  expect([...load.acknowledged, ...later.acknowledged].filter((payload) => !stored.has(payload))).toEqual([])
  return end
}

it('the heap is full: it ends, starts again, and nothing acknowledged is lost (F21)', async () => {
  const end = await runOut(['env', 'NODE_OPTIONS=--max-old-space-size=64'])
  // an abort, said as a status where a shell stands between
  expect(['SIGABRT', 'SIGTRAP', 'SIGILL', 134]).toContain(end)
}, 120_000)

/** Groups of the first and of the second kind (cgroup v1, v2). */
const groups = [
  { parent: '/sys/fs/cgroup/memory', limit: 'memory.limit_in_bytes' },
  { parent: '/sys/fs/cgroup', limit: 'memory.max' },
]

function groupFor(bytes: number): string | null {
  for (const { parent, limit } of groups) {
    const group = join(parent, `kiln-${process.pid}`)
    try {
      mkdirSync(group)
      if (!existsSync(join(group, limit))) throw new Error('no such limit')
      writeFileSync(join(group, limit), String(bytes))
      return group
    } catch {
      if (existsSync(group)) rmdirSync(group)
    }
  }
  return null
}

describe('a limit of the system', () => {
  const group = groupFor(160 << 20)
  afterAll(() => {
    if (group !== null) rmdirSync(group)
  })
  if (group === null) {
    it('needs root and groups with a memory limit (cgroup): said here so that nobody takes it as checked', () => {
      console.warn('not checked here: killed by the system for its memory (F21)')
    })
  } else {
    it('is passed: it is killed, starts again, and nothing acknowledged is lost (F21)', async () => {
      const end = await runOut(['sh', '-c', `echo $$ > ${join(group, 'cgroup.procs')} && exec "$@"`, 'limited'])
      expect(end).toBe('SIGKILL')
    }, 120_000)
  }
})
