import fc from 'fast-check'
import { expect, test } from 'vitest'
import { kilnFold } from '../../server/domain/firing/fold.ts'
import { intakeFold } from '../../server/domain/intake/fold.ts'
import { keptFile } from '../../server/recordings/in/kept-file.ts'
import { contentHash, linesOf, lookAt } from '../../server/recordings/in/look.ts'
import { shelve } from '../../server/recordings/in/shelve.ts'
import { mannerOf, tableOf } from '../../server/recordings/out/table.ts'
import { play } from '../../server/recordings/play.ts'
import { readRecording } from '../../server/recordings/read.ts'
import { createMemoryStore } from '../../server/storage/memory.ts'
import { storyHeader, storyLines } from '../support/firing-story.ts'

const folds = { intake: intakeFold, kiln: kilnFold }
const cases = { numRuns: Number(process.env['CASES'] ?? 4), seed: 7 }

/** A part of the made-up firing with notes of any kind in it. */
const firings = fc.record({
  minutes: fc.integer({ min: 5, max: 40 }),
  notes: fc.array(fc.record({ after: fc.nat(200), text: fc.string({ unit: 'binary', maxLength: 40 }) }), { maxLength: 4 }),
  title: fc.string({ unit: 'binary', maxLength: 30 }),
})

function textOf({ minutes, notes, title }: { minutes: number; notes: { after: number; text: string }[]; title: string }): string {
  const lines = storyLines(minutes / 60)
  for (const { after, text } of notes) {
    const place = after % lines.length
    const at = lines[place]?.at ?? ''
    lines.splice(place + 1, 0, { at, action: 'note', text })
  }
  return linesOf({ header: { ...storyHeader, title }, lines })
}

test('a recording that was taken in comes out with the same content and tells the same', async () => {
  await fc.assert(
    fc.asyncProperty(firings, async (firing) => {
      const text = textOf(firing)
      const store = createMemoryStore()
      const { preview, file } = await lookAt(store, Buffer.from(text), 'x.jsonl', null)
      if (!file) throw new Error(JSON.stringify(preview.problems))
      expect(await store.firings()).toEqual([])
      await shelve(store, folds, file)
      const kept = (await keptFile(store, preview.id)) ?? ''
      expect(contentHash(kept)).toBe(contentHash(text))
      const told = JSON.stringify([...play(folds, readRecording(Buffer.from(text)))])
      expect(JSON.stringify([...play(folds, readRecording(Buffer.from(kept)))])).toBe(told)
      // what stands on the shelf is what the replay tells
      const calls = (await store.outputs(preview.id)).flatMap((output) =>
        output.kind === 'phase' ? [[new Date(output.at).toISOString(), output.phase]] : [],
      )
      expect(calls).toEqual(
        (JSON.parse(told) as { at: string; event: string; phase: string }[]).flatMap((e) => (e.event === 'phase' ? [[e.at, e.phase]] : [])),
      )
      expect((await lookAt(store, Buffer.from(kept), 'y', null)).preview).toMatchObject({ id: preview.id, known: true })
    }),
    cases,
  )
})

test.each(['plain', 'local'] as const)('a firing that went out as a %s table comes in with the same readings', async (preset) => {
  await fc.assert(
    fc.asyncProperty(firings, async (firing) => {
      const store = createMemoryStore()
      const { file, preview } = await lookAt(store, Buffer.from(textOf(firing)), 'x', null)
      if (!file || preview.from === null || preview.to === null) throw new Error(JSON.stringify(preview.problems))
      await shelve(store, folds, file)
      let table = ''
      const what = { id: preview.id, from: preview.from, to: preview.to, phases: [], acts: [], outputs: [] }
      for await (const page of tableOf(store, what, mannerOf(preset, 0))) table += page
      const back = await lookAt(store, Buffer.from(table), 'back.csv', null)
      expect(back.preview.problems).toEqual([])
      if (!back.file) throw new Error('not understood')
      await shelve(store, folds, back.file)
      const { from, to } = preview
      const [was, is] = await Promise.all([preview.id, back.preview.id].map((id) => store.curve(id, from, to, 2 * (to - from))))
      const wall = (lines: typeof was) => lines?.find((line) => line.role === 'wall')
      // the local table writes whole seconds, as the made-up firing does
      expect(wall(was)?.t.length).toBe(preview.readings)
      expect(wall(is)).toEqual(wall(was))
    }),
    cases,
  )
})
