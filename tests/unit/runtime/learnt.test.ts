import { describe, expect, test } from 'vitest'
import { defaultKilnConfig } from '../../../server/contract/kiln-defaults.ts'
import type { RecordingLine } from '../../../server/contract/recording.ts'
import type { Prior } from '../../../server/contract/learnt.ts'
import type { Estimator } from '../../../server/domain/estimate/types.ts'
import { makeKilnFold } from '../../../server/domain/firing/fold.ts'
import { intakeFold } from '../../../server/domain/intake/fold.ts'
import { exportFiring } from '../../../server/recordings/export.ts'
import { readRecording } from '../../../server/recordings/read.ts'
import { silentLog } from '../../../server/runtime/log.ts'
import { Site } from '../../../server/runtime/site.ts'
import { SteppedClock } from '../../../server/runtime/stepped-clock.ts'
import { createMemoryStore } from '../../../server/storage/memory.ts'
import type { Store } from '../../../server/storage/store.ts'
import { storyLines } from '../../support/firing-story.ts'

/** As simple as an estimator can be: what it teaches is what it began with, one tenth more. */
const teacher: Estimator<{ sealed: boolean; mean: number }> = {
  version: 3,
  start: ({ prior }) => ({ sealed: false, mean: prior?.unknowns?.['draught']?.mean ?? 0 }),
  step: (state, _readings, evidence) => {
    for (const one of evidence) {
      if (one.kind === 'sealed') state.sealed = true
      if (one.kind === 'known') state.mean = one.prior?.unknowns?.['draught']?.mean ?? 0
    }
    return state
  },
  estimate: () => null,
  lesson: ({ sealed, mean }) => (sealed ? { part: 'burn', unknowns: { draught: { mean: mean + 0.1, sd: 0.3 } } } : null),
  advice: () => ({
    collectWorthPerH: null,
    startCollecting: false,
    stopCollecting: false,
    seal: false,
    hottestUpperC: null,
    airLeak: false,
    because: {},
    sure: 'low',
  }),
  forecast: () => ({ calls: {}, view: { at: 0, smoke: [] } }),
  freeze: (state) => new TextEncoder().encode(JSON.stringify(state)),
  thaw: (bytes) => JSON.parse(new TextDecoder().decode(bytes)) as { sealed: boolean; mean: number },
}

const folds = { intake: intakeFold, kiln: makeKilnFold(teacher) }
type House = Site<ReturnType<typeof intakeFold.start>, ReturnType<typeof folds.kiln.start>>
const hours = 0.5
/** One firing begins so long after the one before: seconds tick between them, and more of those would only take time. */
const apartMs = 2_000_000

function siteOf(store: Store, clock: SteppedClock): House {
  return new Site({
    folds,
    store,
    clock: () => clock,
    root: 'firing',
    site: 'yard',
    configs: [defaultKilnConfig()],
    demo: false,
    log: silentLog,
  })
}

async function send(site: House, clock: SteppedClock, nth: number, line: RecordingLine): Promise<void> {
  const at = Date.parse(line.at) + nth * apartMs
  clock.moveTo(at)
  if ('topic' in line && 'payload' in line) {
    const boot = JSON.stringify(line.payload).replace('"n":"boot","u":"count","v":3', `"n":"boot","u":"count","v":${String(3 + nth)}`)
    await site.receive({ topic: line.topic, payload: new TextEncoder().encode(boot), retained: false })
  } else if ('action' in line) {
    const { at: _, id, doneAt: __, corrects: ___, ...act } = line
    await site.act('kiln-1', { id: `${id ?? ''}-${String(nth)}`, doneAt: at, act })
  }
}

/** One firing, from lighting to unloading. */
async function fire(site: House, clock: SteppedClock, nth: number): Promise<void> {
  for (const line of storyLines(hours)) await send(site, clock, nth, line)
  await site.act('kiln-1', { id: `end-${String(nth)}`, doneAt: clock.now(), act: { action: 'unload', charcoalKg: 12 } })
}

/** Until what runs beside the entries has come to rest. */
const settled = async (): Promise<void> => {
  for (let i = 0; i < 50; i++) await Promise.resolve()
}

async function yard(): Promise<{ store: Store; clock: SteppedClock; site: House; prior: () => Prior | undefined }> {
  const store = createMemoryStore()
  const clock = new SteppedClock(Date.parse(storyLines(hours)[0]?.at ?? '') - 5000)
  const site = siteOf(store, clock)
  await site.start()
  return { store, clock, site, prior: () => site.session('kiln-1')?.config.prior }
}

describe('what a firing taught of its kiln', () => {
  test('is where the next one begins, and stands in its export', async () => {
    const { store, clock, site, prior } = await yard()
    expect(prior()).toBeUndefined()
    await fire(site, clock, 0)
    await settled()
    expect(prior()).toMatchObject({ firings: 1, unknowns: { draught: { mean: 0.1 } } })
    await fire(site, clock, 1)
    await settled()
    // the second began at 0.1 and taught 0.2: (0.2 + 0.8 * 0.1) / 1.8
    expect(prior()).toMatchObject({ firings: 2, unknowns: { draught: { mean: 0.156 } } })
    await site.stop()
    const [second] = await store.firings()
    const record = await store.firing(second?.id ?? '')
    if (!record) throw new Error('no firing was kept')
    let text = ''
    for await (const page of exportFiring(store, record, new Set())) text += page
    expect(readRecording(new TextEncoder().encode(text)).header.start?.config.prior).toMatchObject({ firings: 1 })
  })

  test('is known again after a kill, with a checkpoint or with the store alone', async () => {
    const { store, clock, site, prior } = await yard()
    await fire(site, clock, 0)
    await settled()
    const taught = prior()
    // nobody stopped it
    const again = siteOf(store, clock)
    await again.start()
    expect(again.session('kiln-1')?.config.prior).toEqual(taught)
    store.checkpoints = () => Promise.resolve([])
    const fresh = siteOf(store, clock)
    await fresh.start()
    expect(fresh.session('kiln-1')?.config.prior).toEqual(taught)
  })

  test('no longer counts once the drum, its cover or the wall probe was changed, also after a start, and is learnt anew', async () => {
    const { store, clock, site, prior } = await yard()
    await fire(site, clock, 0)
    await settled()
    await site.forget('kiln-1', 'probe', 'owner')
    expect(prior()).toBeUndefined()
    const again = siteOf(store, clock)
    await again.start()
    expect(again.session('kiln-1')?.config.prior).toBeUndefined()
    await fire(again, clock, 1)
    await settled()
    expect(again.session('kiln-1')?.config.prior).toMatchObject({ firings: 1, unknowns: { draught: { mean: 0.1 } } })
    await expect(again.forget('no-kiln', 'drum', 'owner')).rejects.toThrow()
  })

  test('does not come from a file: whose kiln that was nobody knows', async () => {
    const { store, clock, site } = await yard()
    await fire(site, clock, 0)
    await settled()
    const [own] = await store.firings()
    const record = await store.firing(own?.id ?? '')
    if (!record) throw new Error('no firing was kept')
    await site.stop()
    await store.putFiring({ ...record, intake: new Uint8Array() })
    const again = siteOf(store, clock)
    await again.start()
    expect(again.session('kiln-1')?.config.prior).toBeUndefined()
  })
})
