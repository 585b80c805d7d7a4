import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Output } from '../../server/contract/fold.ts'
import { wholeCurvePoints } from '../../server/contract/live.ts'
import type { CurvePoint, FiringRecord, JournalEntry, Store } from '../../server/storage/store.ts'

export function entry(seq: number, over: Partial<JournalEntry> = {}): JournalEntry {
  const payload = new TextEncoder().encode(`[{"n":"wall","v":${seq}}]`)
  return {
    seq,
    at: 1_700_000_000_000 + seq,
    kind: 'message',
    kiln: null,
    topic: 'firing/1/yard/n1/readings',
    payload,
    retained: false,
    ...over,
  }
}

export async function readAll(store: Store, after = 0, upTo?: number): Promise<JournalEntry[]> {
  const all: JournalEntry[] = []
  for await (const page of store.read(after, upTo)) all.push(...page)
  return all
}

export function firing(id: string, over: Partial<FiringRecord> = {}): FiringRecord {
  return {
    id,
    kiln: 'k1',
    kilnName: 'Drum',
    title: '',
    startedAt: 1000,
    endedAt: null,
    demo: true,
    phases: [{ phase: 'kindling', from: 1000, to: null }],
    spark: { t: [1000], wall: [20], smoke: [null] },
    originSeq: 1,
    originAt: 1000,
    endSeq: null,
    config: '{}',
    intake: new Uint8Array([1, 2, 3]),
    foldVersion: 1,
    ...over,
  }
}

const plain = (entries: readonly JournalEntry[]) => entries.map((each) => ({ ...each, payload: [...each.payload] }))

/** What every store promises; run against each implementation. @param make gives a fresh, empty store, not yet started */
export function storeContract(name: string, make: () => Promise<{ store: Store; remove(): Promise<void> }>): void {
  describe(`store: ${name}`, () => {
    let store: Store
    let remove: () => Promise<void>
    beforeEach(async () => {
      const made = await make()
      store = made.store
      remove = made.remove
      await store.start()
    })
    afterEach(async () => {
      await store.stop()
      await remove()
    })

    it('gives back the journal byte for byte, in order', async () => {
      const odd = new Uint8Array([0, 255, 128, 10])
      const entries = [
        entry(1),
        entry(2, { kind: 'act', kiln: 'k1', topic: '', payload: new Uint8Array() }),
        entry(3, { retained: true, topic: 'ñandú/水/🔥', payload: odd, at: 0.5 }),
        entry(4, { kind: 'config', kiln: 'k1' }),
        entry(5, { kind: 'health' }),
      ]
      await store.append(entries.slice(0, 2))
      await store.append(entries.slice(2))
      expect(plain(await readAll(store))).toEqual(plain(entries))
      expect(plain(await readAll(store, 1, 3))).toEqual(plain(entries.slice(1, 3)))
    })

    it('keeps the bytes of the call, whatever becomes of the buffer', async () => {
      const payload = new Uint8Array([1, 2, 3])
      const appended = store.append([entry(1, { payload })])
      await appended
      payload.fill(9)
      expect([...((await readAll(store))[0]?.payload ?? [])]).toEqual([1, 2, 3])
    })

    it('resolves in the order of the calls', async () => {
      const order: number[] = []
      const calls = Array.from({ length: 50 }, (_, index) =>
        store.append([entry(index + 1, { kind: index % 7 === 0 ? 'act' : 'message' })]).then(() => order.push(index)),
      )
      await Promise.all(calls)
      expect(order).toEqual(Array.from({ length: 50 }, (_, index) => index))
    })

    it('takes the same entry twice without effect, and refuses another one under its number', async () => {
      await store.append([entry(1), entry(2)])
      await store.append([entry(2), entry(3)])
      await expect(store.append([entry(2, { topic: 'other' })])).rejects.toMatchObject({ name: 'StoreProblem' })
      expect((await readAll(store)).map((each) => each.seq)).toEqual([1, 2, 3])
    })

    it('lets numbers have holes: a refused entry leaves its own unused', async () => {
      await store.append([entry(1)])
      await store.append([entry(5)])
      expect((await readAll(store)).map((each) => each.seq)).toEqual([1, 5])
    })

    it('reads more than one page', async () => {
      await store.append(Array.from({ length: 9000 }, (_, index) => entry(index + 1)))
      const all = await readAll(store)
      expect(all.length).toBe(9000)
      expect(all.every((each, index) => each.seq === index + 1)).toBe(true)
    })

    it('gives the newest checkpoint of each name', async () => {
      const at = (name: string, seq: number) => ({ name, seq, at: seq * 10, version: 1, bytes: new Uint8Array([seq]) })
      for (const checkpoint of [at('intake', 1), at('kiln/a', 1), at('intake', 2), at('intake', 3)]) await store.saveCheckpoint(checkpoint)
      const found = (await store.checkpoints()).sort((a, b) => (a.name < b.name ? -1 : 1))
      expect(found.map(({ name, seq, at, version, bytes }) => [name, seq, at, version, [...bytes]])).toEqual([
        ['intake', 3, 30, 1, [3]],
        ['kiln/a', 1, 10, 1, [1]],
      ])
    })

    it('counts on behind a checkpoint whose last entry was never stored', async () => {
      await store.append([entry(1)])
      await store.saveCheckpoint({ name: 'intake', seq: 3, at: 1, version: 1, bytes: new Uint8Array() })
      await store.stop()
      expect((await store.start()).lastSeq).toBe(3)
      await store.append([entry(4)])
      expect((await readAll(store, 3)).map((each) => each.seq)).toEqual([4])
    })

    it('keeps what was refused, once, cut at 4 KiB, the newest first', async () => {
      const item = (at: number) => ({ at, sender: 'yard/n1', topic: 't', reason: 'bad-json', payload: new Uint8Array(5000).fill(7) })
      await store.quarantine([item(1), item(2)])
      await store.quarantine([item(2)])
      const found = await store.quarantined(10)
      expect(found.map((each) => [each.at, each.payload.length])).toEqual([
        [2, 4096],
        [1, 4096],
      ])
      expect(await store.quarantined(1)).toHaveLength(1)
    })

    it('keeps each output once', async () => {
      const output = (n: number, at = 5): Output => ({
        cause: 3,
        n,
        at,
        kind: 'phase',
        phase: 'drying',
        because: [{ code: 'x', value: n }],
      })
      await store.saveOutputs('k1', 'f1', [output(0), output(1)])
      await store.saveOutputs('k1', 'f1', [output(1), output(0, 6)])
      await store.saveOutputs('k2', 'f2', [output(0)])
      expect(await store.outputs('f1')).toEqual([output(0), output(1), output(0, 6)])
      const hint: Output = { cause: 9, n: 0, at: 9, kind: 'hint', hint: 'feed-fire', by: 10, because: [] }
      await store.saveOutputs('k1', 'f1', [hint])
      expect(await store.outputs('f1', ['hint', 'call'])).toEqual([hint])
      expect(await store.outputs('f1', ['phase'])).toHaveLength(3)
    })

    it('keeps firings and their newest state', async () => {
      await store.putFiring(firing('a'))
      await store.putFiring(firing('b', { startedAt: 2000 }))
      await store.putFiring(firing('a', { title: 'Olive', endedAt: 9 }))
      const found = await store.firing('a')
      expect(found && { ...found, intake: [...found.intake] }).toEqual({
        ...firing('a', { title: 'Olive', endedAt: 9 }),
        intake: [1, 2, 3],
      })
      expect((await store.firings()).map((each) => [each.id, each.title, 'config' in each])).toEqual([
        ['b', '', false],
        ['a', 'Olive', false],
      ])
      expect(await store.firing('none')).toBeNull()
      expect(JSON.parse(await store.shelf())).toEqual(await store.firings())
      expect((JSON.parse(await store.shelf(1)) as { id: string }[]).map(({ id }) => id)).toEqual(['b'])
    })

    it('keeps each revision of a document; the same twice in a row is one', async () => {
      const document = (json: string, at = 1) => ({ kind: 'lot', id: 'L1', at, by: 'ana', json })
      expect(await store.putDocument(document('{"l":1}'))).toBe(1)
      expect(await store.putDocument(document('{"l":1}'))).toBe(1)
      expect(await store.putDocument(document('{"l":2}', 2))).toBe(2)
      expect(await store.putDocument({ ...document('{}'), id: 'A0' })).toBe(1)
      expect((await store.documents('lot')).map((each) => [each.id, each.revision, each.json])).toEqual([
        ['A0', 1, '{}'],
        ['L1', 2, '{"l":2}'],
      ])
      expect((await store.history('lot', 'L1')).map((each) => each.json)).toEqual(['{"l":1}', '{"l":2}'])
      expect(await store.documents('check')).toEqual([])
    })

    describe('curves', () => {
      const series = (hours: number, stepS: number, value: (s: number) => number | null): CurvePoint[] =>
        Array.from({ length: Math.floor((hours * 3600) / stepS) }, (_, index) => ({
          role: 'wall',
          t: index * stepS * 1000,
          value: value(index * stepS),
        }))

      it('keeps the least and the greatest of a long stretch, in about as many points as asked', async () => {
        const spike = 40_005
        const points = series(33, 5, (s) => (s === spike ? 999 : s === spike + 600 ? -7 : 100 + (s % 50)))
        await store.savePoints('f', points)
        const [wall] = await store.curve('f', 0, 33 * 3_600_000, 1000)
        expect(wall?.role).toBe('wall')
        expect(wall?.t.length).toBeGreaterThan(700)
        expect(wall?.t.length).toBeLessThan(1200)
        expect(wall?.value[wall.t.indexOf(spike * 1000)]).toBe(999)
        expect(wall?.value[wall.t.indexOf((spike + 600) * 1000)]).toBe(-7)
        expect(wall?.t).toEqual([...(wall?.t ?? [])].sort((a, b) => a - b))
      })

      it('draws a whole firing once, and anew when a late reading came', async () => {
        await store.savePoints(
          'f',
          series(2, 5, (s) => (s === 600 ? null : s / 7)),
        )
        const end = 2 * 3_600_000
        const drawn = await store.wholeCurve('f', 0, end)
        expect(drawn).toEqual(await store.curve('f', 0, end, wholeCurvePoints))
        await store.savePoints('f', []) // whatever was kept is behind us
        expect(await store.wholeCurve('f', 0, end)).toEqual(drawn)
        await store.savePoints('f', [{ role: 'wall', t: 6001, value: 900 }])
        const [wall] = await store.wholeCurve('f', 0, end)
        expect(wall?.value[wall.t.indexOf(6001)]).toBe(900)
        expect(await store.wholeCurve('f', 0, end / 2)).toEqual(await store.curve('f', 0, end / 2, wholeCurvePoints))
      })

      it('gives every point of a short stretch', async () => {
        const points = series(1, 5, (s) => s)
        await store.savePoints('f', points)
        const [wall] = await store.curve('f', 60_000, 120_000, 1000)
        expect(wall?.t).toEqual(Array.from({ length: 13 }, (_, index) => 60_000 + index * 5000))
        expect(wall?.value).toEqual(wall?.t.map((t) => t / 1000))
      })

      it.each([60, 1000])('breaks the line where nothing was heard and where the probe was at fault (%i points)', async (buckets) => {
        const points = series(4, 5, (s) => (s > 7200 && s < 7800 ? null : 50)).filter(({ t }) => t < 3_600_000 || t > 4_200_000)
        await store.savePoints('f', points)
        const [wall] = await store.curve('f', 0, 4 * 3_600_000, buckets)
        const nulls = (wall?.t ?? []).filter((_, index) => wall?.value[index] === null)
        expect(nulls.some((t) => t >= 3_595_000 && t <= 4_205_000)).toBe(true)
        expect(nulls.some((t) => t > 7_200_000 && t < 7_800_000)).toBe(true)
        expect(nulls.every((t) => (t >= 3_595_000 && t <= 4_205_000) || (t > 7_200_000 && t < 7_800_000))).toBe(true)
      })

      it('keeps the first value of a moment, and late points in their place', async () => {
        const point = (t: number, value: number): CurvePoint => ({ role: 'smoke', t, value })
        await store.savePoints('f', [point(10_000, 1), point(30_000, 3)])
        await store.savePoints('f', [point(20_000, 2), point(10_000, 9)])
        await store.savePoints('g', [point(10_000, 4)])
        expect(await store.curve('f', 0, 60_000, 1000)).toEqual([{ role: 'smoke', t: [10_000, 20_000, 30_000], value: [1, 2, 3] }])
        expect(await store.curve('none', 0, 60_000, 1000)).toEqual([])
      })
    })
  })
}
