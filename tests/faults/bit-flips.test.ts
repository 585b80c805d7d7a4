import { copyFileSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { checkAll } from '../../server/storage/sqlite/check.ts'
import { openDatabase, type Database } from '../../server/storage/sqlite/engine.ts'
import { unpackEntries } from '../../server/storage/sqlite/pack.ts'
import { answer } from '../../server/storage/sqlite/queries.ts'
import type { JournalEntry } from '../../server/storage/store.ts'
import { dataFolder, sqliteIn } from '../contract/data-folder.ts'
import { entry, firing } from '../contract/store.contract.ts'

// `PRAGMA integrity_check` let 144 of 300 flipped bits pass that had changed stored values (handbook, reliability 0.7).

/** Flips that change what is read. */
const flips = Number(process.env['FLIPS'] ?? 300)
const { folder, remove } = dataFolder()
const pristine = join(folder, 'kiln.db')
const spoilt = join(folder, 'spoilt.db')

beforeAll(async () => {
  const store = sqliteIn(folder)
  await store.start()
  await store.append(Array.from({ length: 600 }, (_, index) => entry(index + 1)))
  await store.savePoints(
    'a',
    Array.from({ length: 900 }, (_, index) => ({
      role: index % 2 ? 'wall' : 'smoke',
      t: index * 5000,
      value: index % 50 === 0 ? null : 20 + index / 7,
    })),
  )
  await store.saveOutputs(
    'k1',
    'a',
    Array.from({ length: 100 }, (_, n) => ({
      cause: n,
      n,
      at: n,
      kind: 'phase',
      phase: 'drying',
      because: [{ code: 'wall', value: n / 3 }],
    })),
  )
  for (let n = 0; n < 40; n++)
    await store.putDocument({ kind: 'lot', id: `L${n % 20}`, at: n, by: 'ana', json: JSON.stringify({ litres: n / 3 }) })
  await store.quarantine([{ at: 1, sender: 'yard/n1', topic: 't', reason: 'bad-json', payload: new Uint8Array(300).fill(65) }])
  await store.saveCheckpoint({ name: 'intake', seq: 600, at: 1, version: 1, bytes: new Uint8Array(3000).fill(3) })
  await store.putFiring(firing('a'))
  await store.wholeCurve('a', 0, 33 * 3_600_000)
  await store.stop()
})
afterAll(remove)

/** The journal page by page, as the store reads it. */
function readJournal(database: Database, from: number): JournalEntry[] {
  const all: JournalEntry[] = []
  for (let after = from; ;) {
    const page = unpackEntries(answer(database, { query: 'read', after, upTo: 1e9 }) as Uint8Array)
    const last = page.at(-1)
    if (last === undefined) return all
    all.push(...page)
    after = last.seq
  }
}

/** Everything a program can ask for, as text. */
function readEverything(database: Database): string {
  const hour = 3_600_000
  const parts = [
    readJournal(database, 0),
    answer(database, { query: 'curve', firing: 'a', from: 0, to: hour * 2, buckets: 20_000 }),
    answer(database, { query: 'curve', firing: 'a', from: 0, to: hour * 33, buckets: 1000 }),
    answer(database, { query: 'outputs', firing: 'a', kinds: null }),
    answer(database, { query: 'documents', kind: 'lot' }),
    ...Array.from({ length: 20 }, (_, n) => answer(database, { query: 'history', kind: 'lot', id: `L${n}` })),
    answer(database, { query: 'quarantined', limit: 100 }),
    answer(database, { query: 'firing', id: 'a' }),
    answer(database, { query: 'shelf', most: 100 }),
    (answer(database, { query: 'whole-curve', firing: 'a', from: 0, to: hour * 33 }) as { series: unknown }).series,
    answer(database, { query: 'checkpoints' }),
  ]
  return JSON.stringify(parts, (_key, value: unknown) => (value instanceof Uint8Array ? Buffer.from(value).toString('hex') : value))
}

function attempt<T>(file: string, act: (database: Database) => T): { value: T } | { noticed: true } {
  try {
    const database = openDatabase(file, 'read')
    try {
      return { value: act(database) }
    } finally {
      database.close()
    }
  } catch {
    return { noticed: true }
  }
}

/** Numbers of a fixed seed (xorshift). */
function* numbers(seed: number): Generator<number, never> {
  for (let x = seed; ;) {
    x ^= x << 13
    x ^= x >>> 17
    x ^= x << 5
    yield x >>> 0
  }
}

it(`notices each of the flipped bits that change what is read (${flips} flips)`, () => {
  const original = attempt(pristine, readEverything)
  if (!('value' in original)) throw new Error('the pristine file can not be read')
  const bytes = readFileSync(pristine)
  const chance = numbers(20260301)
  const unnoticed: string[] = []
  let changing = 0
  let onlyByCheck = 0
  while (changing < flips) {
    const at = chance.next().value % bytes.length
    const bit = chance.next().value % 8
    const copy = Buffer.from(bytes)
    copy[at] = (copy[at] ?? 0) ^ (1 << bit)
    writeFileSync(spoilt, copy)
    const read = attempt(spoilt, readEverything)
    if ('value' in read && read.value === original.value) continue
    changing++
    if ('noticed' in read) continue
    onlyByCheck++
    if (!('noticed' in attempt(spoilt, checkAll))) unnoticed.push(`byte ${at} bit ${bit}`)
  }
  const text = `${changing - onlyByCheck} on reading, ${onlyByCheck - unnoticed.length} by the check of a start, ${unnoticed.length} unnoticed`
  console.info(`${changing} flipped bits that change what is read: ${text}`)
  expect(unnoticed).toEqual([])
})

it('notices a journal row that is gone although the file is sound', () => {
  copyFileSync(pristine, spoilt)
  const database = openDatabase(spoilt, 'write')
  database.exec('DELETE FROM journal WHERE seq = 300')
  expect(() => readJournal(database, 0)).toThrow(/between 299 and 301/)
  expect(() => readJournal(database, 300)).toThrow(/between 299 and 301/)
  database.close()
})
