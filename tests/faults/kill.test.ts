import { setTimeout as pause } from 'node:timers/promises'
import { rmSync } from 'node:fs'
import { dirname } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { builtProgram } from '../contract/built.ts'
import { dataFolder, sqliteIn } from '../contract/data-folder.ts'
import { readAll } from '../contract/store.contract.ts'
import { Load } from './rig/load.ts'
import { bundleRig, startReady } from './rig/programs.ts'

const kills = Number(process.env['KILLS'] ?? 5)
const { folder, remove } = dataFolder()
let recorder = ''
beforeAll(async () => {
  recorder = await bundleRig('recorder')
})
afterAll(async () => {
  rmSync(dirname(recorder), { recursive: true })
  await remove()
})

it(`loses no acknowledged reading in ${kills} kill -9 under load (F1)`, async () => {
  const acknowledged = new Set<string>()
  let slowest = 0
  for (let kill = 0; kill < kills; kill++) {
    const running = await startReady(recorder, [folder, builtProgram('storage-worker'), '0'])
    slowest = Math.max(slowest, running.readyAfterMs)
    const load = new Load(`k${kill}`)
    load.start(running.port, 10, 10)
    await load.until(20)
    await pause((kill * 97) % 400)
    running.child.kill('SIGKILL')
    await running.ended
    load.stop()
    expect(load.acknowledged.size).toBeGreaterThan(0)
    for (const payload of load.acknowledged) acknowledged.add(payload)
  }
  const store = sqliteIn(folder)
  const { opening } = await store.start()
  const stored = new Set((await readAll(store)).map((each) => Buffer.from(each.payload).toString()))
  await store.stop()
  const lost = [...acknowledged].filter((payload) => !stored.has(payload))
  console.info(
    `kill -9: ${kills} kills, ${acknowledged.size} acknowledged, ${stored.size} stored, ${lost.length} lost, slowest start ${Math.round(slowest)} ms`,
  )
  expect(opening.setAside).toBeNull()
  expect(lost).toEqual([])
})

it('frozen for a second and thawed, it goes on and has lost nothing (F23)', async () => {
  const { folder, remove } = dataFolder()
  const running = await startReady(recorder, [folder, builtProgram('storage-worker'), '0'])
  const load = new Load('f')
  load.start(running.port, 3, 5)
  await load.until(50)
  running.child.kill('SIGSTOP')
  await pause(1000)
  const frozen = load.acknowledged.size
  running.child.kill('SIGCONT')
  await load.until(frozen + 50)
  load.stop()
  running.child.kill('SIGTERM')
  expect(await running.ended).toBe(0)
  const store = sqliteIn(folder)
  await store.start()
  const stored = new Set((await readAll(store)).map((each) => Buffer.from(each.payload).toString()))
  await store.stop()
  await remove()
  expect(load.acknowledged.size).toBeGreaterThanOrEqual(frozen + 50)
  expect([...load.acknowledged].filter((payload) => !stored.has(payload))).toEqual([])
})

it('commits and leaves in order on SIGTERM under load (F26)', async () => {
  const { folder, remove } = dataFolder()
  const running = await startReady(recorder, [folder, builtProgram('storage-worker'), '0'])
  const load = new Load('t')
  load.start(running.port, 5, 10)
  await load.until(50)
  running.child.kill('SIGTERM')
  expect(await running.ended).toBe(0)
  load.stop()
  const store = sqliteIn(folder)
  await store.start()
  const stored = new Set((await readAll(store)).map((each) => Buffer.from(each.payload).toString()))
  await store.stop()
  await remove()
  expect([...load.acknowledged].filter((payload) => !stored.has(payload))).toEqual([])
})
