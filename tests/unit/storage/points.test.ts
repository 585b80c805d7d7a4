import { expect, it } from 'vitest'
import { loadEngine } from '../../../server/storage/sqlite/engine.ts'
import { migrations } from '../../../server/storage/sqlite/migrations/all.ts'
import { PointTable } from '../../../server/storage/sqlite/tables/points.ts'

const began = Date.UTC(2026, 2, 14, 6)

it('a batch writes its own minutes and no others, however many firings were written before by the same connection', () => {
  const database = new (loadEngine().DatabaseSync)(':memory:')
  for (const migration of migrations) database.exec(migration)
  const table = new PointTable(database)
  const changesOf = (firing: string, t: number): number => {
    const changes = () => Number(database.prepare('SELECT total_changes() AS n').get()?.['n'])
    const before = changes()
    table.put(firing, [
      { role: 'wall', t, value: 60 },
      { role: 'outlet', t, value: 31 },
    ])
    return changes() - before
  }
  // two series, two points, two minutes
  expect(changesOf('first', began)).toBe(6)
  for (let n = 0; n < 20; n++) expect(changesOf(`later-${n}`, began + n)).toBe(6)
  // the minute is taken up again where it stood
  expect(changesOf('first', began + 1000)).toBe(4)
  expect(database.prepare('SELECT max(count) AS n FROM minute').get()?.['n']).toBe(2)
  database.close()
})
