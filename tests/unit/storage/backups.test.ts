import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { newestBackupAt } from '../../../server/storage/sqlite/backup.ts'
import { Backups } from '../../../server/storage/sqlite/backups.ts'
import { placesIn } from '../../../server/storage/sqlite/places.ts'
import { dataFolder } from '../../contract/data-folder.ts'

// reliability 10.1: at the end of each firing and daily

const hourMs = 3_600_000
const log = { info: () => {}, warn: () => {} }
beforeEach(() => void vi.useFakeTimers({ now: Date.UTC(2026, 5, 1, 6) }))
afterEach(() => void vi.useRealTimers())

/** A shelf of backups that outlives the service, and how often one was made. */
function shelf(newest: number | null) {
  const made: number[] = []
  const source = {
    make: () => {
      made.push(Date.now())
      newest = Date.now()
      return Promise.resolve('a backup')
    },
    newestAt: () => newest,
    now: () => Date.now(),
  }
  return { made, start: () => new Backups(source, log) }
}
async function serve(backups: Backups, hours: number): Promise<void> {
  backups.start()
  await vi.advanceTimersByTimeAsync(hours * hourMs)
  await backups.stop()
}

it('a service that is switched on for eight hours of each day makes one every day', async () => {
  const { made, start } = shelf(null)
  for (let day = 0; day < 5; day++) {
    await serve(start(), 8)
    vi.setSystemTime(Date.now() + 16 * hourMs)
  }
  expect(made).toHaveLength(5)
})

it('one that is started anew each hour makes no more than one a day, and one that runs on makes one a day', async () => {
  const { made, start } = shelf(Date.now())
  for (let hour = 0; hour < 49; hour++) await serve(start(), 1)
  expect(made).toHaveLength(2)
  await serve(start(), 72)
  expect(made).toHaveLength(5)
})

it('where the clock says that the newest was made in the future, a day of service counts', async () => {
  const { made, start } = shelf(Date.now() + 1000 * 24 * hourMs)
  await serve(start(), 23)
  expect(made).toHaveLength(0)
  await serve(start(), 25)
  expect(made).toHaveLength(1)
})

it('after one that failed it tries again an hour later', async () => {
  const { made, start } = shelf(null)
  const failing = start()
  vi.spyOn(failing, 'now').mockRejectedValueOnce(new Error('disk full'))
  await serve(failing, 1.5)
  expect(made).toHaveLength(1)
})

it('the newest is told by the name that it was given; one without a manifest was never finished', async () => {
  const { folder, remove } = dataFolder()
  const places = placesIn(folder)
  expect(newestBackupAt(places)).toBeNull()
  mkdirSync(places.backups, { recursive: true })
  for (const name of ['2026-05-30T05-00-00.000Z.db', '2026-05-31T05-06-07.089Z.db', '2026-06-01T05-00-00.000Z.db'])
    writeFileSync(join(places.backups, name), '')
  for (const name of ['2026-05-30T05-00-00.000Z.db', '2026-05-31T05-06-07.089Z.db'])
    writeFileSync(join(places.backups, `${name}.json`), '{}')
  expect(newestBackupAt(places)).toBe(Date.UTC(2026, 4, 31, 5, 6, 7, 89))
  await remove()
})
