import { once } from 'node:events'
import { readFileSync } from 'node:fs'
import { defaultKilnConfig } from '../../../server/contract/kiln-defaults.ts'
import type { JournalEntry } from '../../../server/storage/store.ts'
import { createSqliteStore } from '../../../server/storage/sqlite/store.ts'
import { RestSite } from '../../support/rest-site.ts'

// A year of firings, each with a pack of four channels every 10 s, exported over HTTP: filled, served and read by a process each.

const [part = '', folder = '', program = '', firings = '', hours = ''] = process.argv.slice(2)
const store = createSqliteStore({ folder, program, ballastBytes: 1 << 20 })
const hour = 3_600_000
const began = Date.UTC(2026, 0, 2, 6)
const apart = Math.floor((360 * 24 * hour) / Number(firings))
const rows = Number(hours) * 360
const topic = 'firing/1/yard/n1/readings'
const mb = (bytes: number): string => `${(bytes / 1e6).toFixed(0)} MB`

function entryOf(seq: number, at: number): JournalEntry {
  const records = ['firebox', 'wall', 'outlet', 'smoke'].map((n, k) => ({ n, u: 'Cel', v: (((seq * 37 + k * 91) % 4000) / 16).toFixed(4) }))
  const payload = Buffer.from(JSON.stringify([{ bn: 'yard/n1/', bt: at / 1000 }, ...records, { n: 'seq', u: 'count', v: seq }]))
  return { seq, at, kind: 'message', kiln: null, topic, payload, retained: false }
}

async function fill(): Promise<void> {
  await store.start()
  let seq = 0
  for (let n = 0; n < Number(firings); n++) {
    const startedAt = began + n * apart
    const originSeq = seq
    for (let from = 0; from < rows; from += 2000) {
      const entries = Array.from({ length: Math.min(2000, rows - from) }, (_, k) => entryOf(++seq, startedAt + (from + k) * 10_000))
      await store.append(entries)
    }
    await store.putFiring({
      id: `demo-${n}`,
      kiln: 'kiln-1',
      kilnName: 'Bench',
      title: '',
      startedAt,
      endedAt: startedAt + Number(hours) * hour,
      demo: true,
      phases: [],
      spark: { t: [], wall: [], smoke: [] },
      originSeq,
      originAt: startedAt,
      endSeq: seq,
      config: JSON.stringify(defaultKilnConfig()),
      intake: new Uint8Array(4096),
      foldVersion: 1,
    })
  }
  await store.stop()
}

/** Serves until it is told to end, then tells what it took: the whole process, its two storage threads with it. */
async function serve(): Promise<void> {
  const site = new RestSite(Date.UTC(2027, 0, 1), store)
  const url = await site.start()
  const before = process.memoryUsage().rss
  console.log(url)
  process.stdin.resume()
  await once(process.stdin, 'end')
  const most = mostHeld()
  const verdict = most <= 150e6 ? 'within' : 'BEYOND'
  if (most > 150e6) process.exitCode = 1
  console.log(`the whole process: ${mb(before)} before, ${mb(most)} at most, ${mb(most - before)} of it for the export (${verdict} 150 MB)`)
  await site.stop()
}

/** Most memory that this process has held, bytes (proc(5), VmHWM): the peak of `getrusage` is inherited from the process that started it. */
function mostHeld(): number {
  const kib = /VmHWM:\s+(\d+) kB/.exec(readFileSync('/proc/self/status', 'utf8'))?.[1]
  return Number(kib) * 1024
}

/** Asks for the year as a tablet would, in a process of its own, and throws the bytes away. */
async function take(url: string): Promise<void> {
  const start = performance.now()
  const answer = await fetch(`${url}api/season?from=${Date.UTC(2026, 0)}&to=${Date.UTC(2027, 0)}`)
  if (!answer.ok) throw new Error(await answer.text())
  let bytes = 0
  for await (const chunk of answer.body ?? []) bytes += (chunk as Uint8Array).length
  const seconds = ((performance.now() - start) / 1000).toFixed(1)
  console.log(`${firings} firings of ${hours} h, ${Number(firings) * rows * 4} readings: ${mb(bytes)} in ${seconds} s`)
}

await (part === 'fill' ? fill() : part === 'serve' ? serve() : take(part))
