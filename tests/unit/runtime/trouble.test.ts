import { describe, expect, test } from 'vitest'
import { defaultKilnConfig } from '../../../server/contract/kiln-defaults.ts'
import { makeKilnFold } from '../../../server/domain/firing/fold.ts'
import { intakeFold } from '../../../server/domain/intake/fold.ts'
import { silentLog } from '../../../server/runtime/log.ts'
import { ActProblem, Site } from '../../../server/runtime/site.ts'
import { SteppedClock } from '../../../server/runtime/stepped-clock.ts'
import { createMemoryStore } from '../../../server/storage/memory.ts'
import { StoreProblem } from '../../../server/storage/store.ts'
import type { Store } from '../../../server/storage/store.ts'

const start = Date.UTC(2026, 2, 1, 7, 0, 0)

async function siteOn(store: Store, intake = intakeFold) {
  const clock = new SteppedClock(start)
  // by rules alone: what is tested here is the site
  const folds = { intake, kiln: makeKilnFold<never>(null) }
  const setup = {
    folds,
    store,
    clock: () => clock,
    root: 'firing',
    site: 'yard',
    configs: [defaultKilnConfig()],
    demo: false,
    log: silentLog,
  }
  const site = new Site(setup)
  await site.start()
  const alarms = () => site.kilnView('kiln-1')?.alarms.flatMap((alarm) => (alarm.state === 'normal' ? [] : [alarm.alarm])) ?? []
  return { site, clock, alarms }
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0))
const reading = (seq: number) => ({
  topic: 'firing/1/yard/n1/readings',
  payload: new TextEncoder().encode(
    JSON.stringify([
      { bn: 'yard/n1/', bu: 'Cel', n: 'wall', v: 20 + seq, t: 0 },
      { n: 'boot', u: 'count', v: 1 },
      { n: 'seq', u: 'count', v: seq },
      { n: 'up', u: 's', v: seq },
    ]),
  ),
  retained: false,
})

describe('a site in trouble', () => {
  test('a full disk: nothing is acknowledged, the firing goes on from memory, an alarm stands until it stores again', async () => {
    const memory = createMemoryStore()
    let full = false
    const append = memory.append.bind(memory)
    const store = Object.assign(memory, {
      append: (entries: Parameters<Store['append']>[0]) => (full ? Promise.reject(new StoreProblem('disk-full', 'full')) : append(entries)),
    })
    const { site, clock, alarms } = await siteOn(store)
    await site.receive(reading(1))
    full = true
    clock.moveTo(start + 1000)
    await expect(site.receive(reading(2))).rejects.toThrow(StoreProblem)
    expect(site.kilnView('kiln-1')?.channels[0]?.value).toBe(22)
    await expect(site.act('kiln-1', { id: 'a', doneAt: start, act: { action: 'light' } })).rejects.toThrow(StoreProblem)
    clock.moveTo(start + 30_000)
    await settled()
    expect(site.siteView().health.map((one) => one.code)).toContain('storage-failing')
    expect(alarms()).toContain('storage-failing')

    full = false
    clock.moveTo(start + 40_000)
    await settled()
    expect(site.siteView().health).toEqual([])
    // the tablet sends what was not acknowledged again: it is taken, once
    await site.act('kiln-1', { id: 'a', doneAt: start, act: { action: 'light' } })
    await site.act('kiln-1', { id: 'a', doneAt: start, act: { action: 'light' } })
    expect(site.kilnView('kiln-1')?.firing.acts).toHaveLength(1)
    await site.stop()
  })

  test('a fold that throws is told and goes on with the next message, also in a recovery that meets the same one', async () => {
    const store = createMemoryStore()
    const poisoned = {
      ...intakeFold,
      step(state: Parameters<typeof intakeFold.step>[0], message: Parameters<typeof intakeFold.step>[1]) {
        if (message.topic.endsWith('poison')) throw new Error('a defect of ours')
        return intakeFold.step(state, message)
      },
    }
    const { site, clock } = await siteOn(store, poisoned)
    await site.receive({ ...reading(1), topic: 'firing/1/yard/n1/poison' })
    expect(site.healthy()).toBe(false)
    clock.moveTo(start + 5000)
    await site.receive(reading(2))
    expect(site.kilnView('kiln-1')?.channels[0]?.value).toBe(22)
    clock.moveTo(start + 70_000)
    await settled()
    expect(site.siteView().health).toEqual([])
    const again = await siteOn(store, poisoned)
    expect(again.site.kilnView('kiln-1')?.channels[0]?.value).toBe(22)
    await again.site.stop()
  })

  test('nobody has looked for a minute of a firing: the folds hear of it, and of the end of it', async () => {
    const { site, clock } = await siteOn(createMemoryStore())
    clock.moveTo(start + 200_000)
    await settled()
    expect(site.siteView().health).toEqual([])
    await site.act('kiln-1', { id: 'a', doneAt: start, act: { action: 'light' } })
    clock.moveTo(start + 203_000)
    await settled()
    expect(site.siteView().health.map((one) => one.code)).toEqual(['nobody-watching'])
    const page = {}
    site.echo(page, false)
    clock.moveTo(start + 204_000)
    expect(site.siteView().health).toHaveLength(1)
    site.echo(page, true)
    clock.moveTo(start + 206_000)
    expect(site.siteView().health).toEqual([])
    await site.stop()
  })

  test('what belongs to no kiln, or corrects nothing, is not taken', async () => {
    const { site } = await siteOn(createMemoryStore())
    const act = { id: 'a', doneAt: start, act: { action: 'light' } as const }
    await expect(site.act('other', act)).rejects.toEqual(new ActProblem('unknown-kiln'))
    await expect(site.act('kiln-1', { ...act, corrects: 'never' })).rejects.toEqual(new ActProblem('unknown-act'))
    await site.stop()
  })

  test('settings of a kiln that were changed while it was off count from the next start, once', async () => {
    const store = createMemoryStore()
    const first = await siteOn(store)
    await first.site.configure({ ...defaultKilnConfig(), volumeL: 150 })
    await first.site.stop()
    const second = await siteOn(store)
    expect(second.site.session('kiln-1')?.config.volumeL).toBe(200)
    await second.site.stop()
    const third = await siteOn(store)
    let entries = 0
    for await (const page of store.read(0)) entries += page.filter((entry) => entry.kind === 'config').length
    expect(entries).toBe(2)
    await third.site.stop()
  })
})
