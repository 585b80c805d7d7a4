import { describe, expect, test } from 'vitest'
import { defaultKilnConfig } from '../../../server/contract/kiln-defaults.ts'
import type { Output } from '../../../server/contract/fold.ts'
import type { RecordingLine } from '../../../server/contract/recording.ts'
import { makeKilnFold } from '../../../server/domain/firing/fold.ts'
import { intakeFold } from '../../../server/domain/intake/fold.ts'
import { endOf, eventOf } from '../../../server/recordings/events.ts'
import { exportFiring } from '../../../server/recordings/export.ts'
import { play } from '../../../server/recordings/play.ts'
import { readRecording } from '../../../server/recordings/read.ts'
import { silentLog } from '../../../server/runtime/log.ts'
import { Site } from '../../../server/runtime/site.ts'
import { createMemoryStore } from '../../../server/storage/memory.ts'
import type { Store } from '../../../server/storage/store.ts'
import { SteppedClock } from '../../../server/runtime/stepped-clock.ts'
import { storyLines } from '../../support/firing-story.ts'

// by rules alone: what is tested here is the site
const folds = { intake: intakeFold, kiln: makeKilnFold<never>(null) }
const setup = (store: Store, clock: SteppedClock) => ({
  folds,
  store,
  clock: () => clock,
  root: 'firing',
  site: 'yard',
  configs: [defaultKilnConfig()],
  demo: false,
  log: silentLog,
})

async function send(site: Site<never, never>, clock: SteppedClock, line: RecordingLine): Promise<void> {
  clock.moveTo(Math.max(clock.now(), Date.parse(line.at)))
  if ('topic' in line && 'payload' in line) {
    const payload = new TextEncoder().encode(JSON.stringify(line.payload))
    await site.receive({ topic: line.topic, payload, retained: line.retained ?? false })
  } else if ('action' in line) {
    const { at, id, doneAt: _, corrects: __, ...act } = line
    await site.act('kiln-1', { id: id ?? at, doneAt: Date.parse(at), act })
  }
}

/** What a live run told of its firing, as lines of a replay. */
const linesOf = (outputs: readonly Output[]): string[] =>
  outputs.flatMap((output) => {
    const line = eventOf('kiln-1', output)
    return line ? [JSON.stringify(line)] : []
  })

describe('a site', () => {
  test('stopped and started in the middle of a firing, exported, replays to the same lines byte for byte', async () => {
    const lines = storyLines(2)
    const store = createMemoryStore()
    let clock = new SteppedClock(Date.parse(lines[0]?.at ?? '') - 5000)
    let site = new Site(setup(store, clock))
    await site.start()
    for (const [index, line] of lines.entries()) {
      await send(site as never, clock, line)
      if (index % 50 === 7) await send(site as never, clock, line) // a duplicate, as QoS 1 may bring it
      if (index === 200 || index === 500) {
        if (index === 500) await site.stop()
        // index 200: nobody stopped it, its clock stands still for ever; the newest checkpoint is minutes old
        clock = new SteppedClock(clock.now() + 3500)
        site = new Site(setup(store, clock))
        await site.start()
      }
    }
    await site.act('kiln-1', { id: 'end', doneAt: clock.now(), act: { action: 'unload', charcoalKg: 12 } })
    const end = clock.now()
    await site.stop()

    const [firing] = await store.firings()
    const record = await store.firing(firing?.id ?? '')
    if (!record) throw new Error('no firing was kept')
    expect(record.phases.length).toBeGreaterThan(0)
    expect(record.endedAt).toBe(end)
    let text = ''
    for await (const page of exportFiring(store, record, new Set())) text += page
    const replayed = [...play(folds, readRecording(new TextEncoder().encode(text)))]
    const live = linesOf(await store.outputs(record.id))
    expect(live.length).toBeGreaterThan(3)
    const last = replayed.at(-1)
    expect([...live, JSON.stringify(endOf(end, Number(last?.readings), {}))]).toEqual(replayed.map((line) => JSON.stringify(line)))
  })
})
