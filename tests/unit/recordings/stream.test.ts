import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { afterAll, expect, test } from 'vitest'
import { readRecording } from '../../../server/recordings/read.ts'
import { streamRecording } from '../../../server/recordings/stream.ts'

const folder = mkdtempSync(join(tmpdir(), 'stream-'))
afterAll(() => rmSync(folder, { recursive: true }))

const at = '2026-03-01T07:30:05.000Z'
// more than one chunk of a file (64 KiB), with letters of three bytes that a chunk may cut
const rows = [
  { recording: 1, title: 'ฟืน' },
  ...Array.from({ length: 4000 }, (_, n) => ({ at, topic: 'firing/1/yard/n1/readings', payload: [{ n: 'ผนัง', v: n }], retained: false })),
]
const bytes = new TextEncoder().encode(rows.map((row) => `${JSON.stringify(row)}\n`).join(''))

function put(name: string, content: Uint8Array): string {
  const file = join(folder, name)
  writeFileSync(file, content)
  return file
}

async function collected<T>(items: AsyncIterable<T>): Promise<T[]> {
  const found: T[] = []
  for await (const item of items) found.push(item)
  return found
}

async function all(file: string): Promise<unknown> {
  const { header, lines } = await streamRecording(file)
  return { header, lines: await collected(lines) }
}

test.each([
  ['plain', 'a.jsonl', bytes],
  ['compressed', 'a.jsonl.gz', gzipSync(bytes)],
])('a %s recording gives the same as one that is read whole', async (_, name, content) => {
  expect(await all(put(name, content))).toEqual(readRecording(bytes))
})

test.each([
  ['an empty file', 'empty.jsonl', new Uint8Array(), /empty/],
  ['a file without a header', 'headless.jsonl', new TextEncoder().encode('{"at":"x"}'), /line 1/],
  ['a line that is none', 'bad.jsonl', new TextEncoder().encode(`{"recording":1}\n{"at":"${at}","action":"light"}\n{"at":7}\n`), /line 3/],
  ['a compressed file that was cut', 'cut.jsonl.gz', gzipSync(bytes).subarray(0, 500), /./],
])('%s is refused', async (_, name, content, what) => {
  await expect(all(put(name, content))).rejects.toThrow(what)
})

test('what was not asked for is not read on: the file can be left', async () => {
  const { lines } = await streamRecording(put('left.jsonl', bytes))
  expect((await lines.next()).value).toEqual(rows[1])
  await lines.return()
  expect((await lines.next()).done).toBe(true)
})
